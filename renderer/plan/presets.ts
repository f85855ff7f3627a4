import { reliefOfRadius } from '../../geometry/aim.ts'
import type { Job } from '../../geometry/job.ts'
import { radFromDeg } from '../../geometry/units.ts'
import type { Tool } from '../../main/contract/entities.ts'

/** What a tool is ground for. */
export type Purpose = 'fine' | 'usual' | 'coarse' | 'joints' | 'square' | 'slight'

/**
 * What is usual for a kind of tool: common practice, not a rule, and anyone may change it. The camber as the wood sees
 * it is never less than the deepest shaving, so that no corner digs in; a tool that shoots or fits is ground straight.
 */
export type Preset = { readonly purpose: Purpose; readonly shavingDepthMm: number } & (
  | { readonly woodReliefMm: number }
  | { readonly edgeRadiusMm: number }
  | { readonly straight: true }
)

const wood = (purpose: Purpose, woodReliefMm: number, shavingDepthMm: number): Preset => ({
  purpose,
  woodReliefMm,
  shavingDepthMm,
})
const radius = (purpose: Purpose, edgeRadiusMm: number, shavingDepthMm: number): Preset => ({
  purpose,
  edgeRadiusMm,
  shavingDepthMm,
})
const straight = (shavingDepthMm: number): Preset => ({ purpose: 'square', straight: true, shavingDepthMm })

/** Common practice. Figures for curves in mm; radii for roughing irons as the trade gives them (a fore iron's 8 in). */
const presets: Record<Tool['kind'], readonly Preset[]> = {
  smoothing: [wood('fine', 0.03, 0.02), wood('usual', 0.06, 0.04), wood('coarse', 0.09, 0.08)],
  bevelUpSmoothing: [wood('fine', 0.03, 0.02), wood('usual', 0.06, 0.05), wood('coarse', 0.1, 0.1)],
  jack: [radius('usual', 250, 0.4), radius('coarse', 200, 0.6), wood('fine', 0.1, 0.1)],
  lowAngleJack: [wood('usual', 0.1, 0.1), wood('fine', 0.04, 0.03)],
  fore: [radius('usual', 200, 0.5)],
  try: [wood('usual', 0.1, 0.1), wood('joints', 0.06, 0.05)],
  jointer: [wood('usual', 0.08, 0.08), wood('joints', 0.06, 0.05)],
  scrub: [radius('usual', 75, 1)],
  block: [wood('slight', 0.05, 0.05), straight(0.05)],
  shooting: [straight(0.05)],
  shoulder: [straight(0.05)],
  rebate: [straight(0.1)],
  plough: [straight(0.2)],
  spokeshave: [straight(0.1), wood('slight', 0.1, 0.1)],
  chisel: [straight(0.1)],
  other: [],
}

/** Shavings are given to a hundredth of a millimetre, rounded down so that the corners stay out of the wood. */
const SHAVING_STEPS_PER_MM = 100

/**
 * A radius shows the wood less camber at a low seat and on a narrow iron: the shaving is then as thin as that camber.
 * Null where there is no camber left to plane with.
 */
const withinCamber = (preset: Preset, widthMm: number, seatAngleDeg: number): Preset | null => {
  if (!('edgeRadiusMm' in preset) || preset.edgeRadiusMm < widthMm / 2) return preset
  const camberMm = reliefOfRadius(widthMm, preset.edgeRadiusMm) * Math.sin(radFromDeg(seatAngleDeg))
  if (camberMm >= preset.shavingDepthMm) return preset
  const shavingDepthMm = Math.floor(camberMm * SHAVING_STEPS_PER_MM) / SHAVING_STEPS_PER_MM
  return shavingDepthMm > 0 ? { ...preset, shavingDepthMm } : null
}

/** @returns common practice for a tool as it lies in its plane, without what speaks of a seat that the tool has not got */
export const presetsFor = ({
  kind,
  seatAngleDeg,
  widthMm,
}: Pick<Tool, 'kind' | 'seatAngleDeg' | 'widthMm'>): readonly Preset[] =>
  seatAngleDeg === null
    ? presets[kind].filter((preset) => !('woodReliefMm' in preset))
    : presets[kind].map((preset) => withinCamber(preset, widthMm, seatAngleDeg)).filter((preset) => preset !== null)

const noCurve = { reliefMm: null, woodReliefMm: null, edgeRadiusMm: null }

/** @returns the job with common practice for its aim */
export const withPreset = (job: Job, preset: Preset): Job => {
  const { shavingDepthMm } = preset
  const curve =
    'woodReliefMm' in preset
      ? { woodReliefMm: preset.woodReliefMm }
      : 'edgeRadiusMm' in preset
        ? { edgeRadiusMm: preset.edgeRadiusMm }
        : { reliefMm: 0 }
  return { ...job, aim: { ...job.aim, ...noCurve, ...curve, shavingDepthMm } }
}

/** @returns whether a job aims at just what common practice says */
export const meetsPreset = ({ aim }: Job, preset: Preset): boolean => {
  const wanted = withPreset({ aim } as Job, preset).aim
  return (['reliefMm', 'woodReliefMm', 'edgeRadiusMm', 'shavingDepthMm'] as const).every(
    (key) => wanted[key] === aim[key],
  )
}

import type { Job } from '../../geometry/job.ts'
import type { Tool } from '../../main/contract/entities.ts'

/**
 * What is usual for a kind of tool: common practice, not a rule, and anyone may change it. The camber as the wood sees
 * it is never less than the deepest shaving, so that no corner digs in; a tool that shoots or fits is ground straight.
 */
export type Preset = { readonly shavingDepthMm: number } & (
  | { readonly woodReliefMm: number }
  | { readonly edgeRadiusMm: number }
  | { readonly straight: true }
)

/** Common practice. Figures for curves in mm; radii for roughing irons as the trade gives them. */
const presets: Record<Tool['kind'], Preset | null> = {
  smoothing: { woodReliefMm: 0.06, shavingDepthMm: 0.04 },
  bevelUpSmoothing: { woodReliefMm: 0.06, shavingDepthMm: 0.05 },
  jack: { edgeRadiusMm: 250, shavingDepthMm: 0.4 },
  lowAngleJack: { woodReliefMm: 0.1, shavingDepthMm: 0.1 },
  fore: { edgeRadiusMm: 200, shavingDepthMm: 0.5 },
  try: { woodReliefMm: 0.1, shavingDepthMm: 0.1 },
  jointer: { woodReliefMm: 0.08, shavingDepthMm: 0.08 },
  scrub: { edgeRadiusMm: 75, shavingDepthMm: 1 },
  block: { woodReliefMm: 0.05, shavingDepthMm: 0.05 },
  shooting: { straight: true, shavingDepthMm: 0.05 },
  shoulder: { straight: true, shavingDepthMm: 0.05 },
  rebate: { straight: true, shavingDepthMm: 0.1 },
  plough: { straight: true, shavingDepthMm: 0.2 },
  spokeshave: { straight: true, shavingDepthMm: 0.1 },
  chisel: { straight: true, shavingDepthMm: 0.1 },
  other: null,
}

/** @returns common practice for a tool, or null where there is none, or where it speaks of a seat the tool has not got */
export const presetFor = ({ kind, seatAngleDeg }: Pick<Tool, 'kind' | 'seatAngleDeg'>): Preset | null => {
  const preset = presets[kind]
  return preset && 'woodReliefMm' in preset && seatAngleDeg === null ? null : preset
}

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

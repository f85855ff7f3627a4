import { parseJobText } from '../../geometry/parseJob.ts'
import type { Result } from '../../geometry/result.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { createTexts } from '../../main/texts.ts'
import { seeded } from './seeded.ts'

const { t } = createTexts()

const sound = {
  version: 1,
  blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up', currentBevelDeg: 25, startEdge: null },
  station: { wheelDiameterMm: 250, wheelWidthMm: 50, wheelSpeedRpm: 90, barDiameterMm: 12, barOffsetMm: 0 },
  fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8, pivotSetbackMm: 0 },
  aim: { task: 'reshape', bandMm: 0.4, bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5, shavingDepthMm: 0.1 },
  motion: { stopTurnsLeft: 2, stopTurnsRight: 2, traverseMm: 10, fingerReachMm: 26, sweeps: 2, stepsPerSweep: 8 },
  grid: { across: 11, through: 5 },
}

/** What comes to stand in a field: edges of the number line, other types, and plausible figures of every size. */
const strange: readonly unknown[] = [
  ...[
    0,
    -0,
    -1,
    1e-300,
    1e300,
    -1e9,
    5e-324,
    0.1,
    90,
    180,
    360,
    2 ** 53,
    '',
    '25',
    'NaN',
    null,
    true,
    [],
    {},
    [1, 2],
    [null],
  ],
]

/** The sound job's text with some fields changed, left out, added or doubled; sometimes cut short as a text. */
export const damagedJobText = (seed: number): string => {
  const random = seeded(seed)
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T
  const job = structuredClone(sound) as unknown as Record<string, Record<string, unknown>>
  const parts = Object.keys(sound).filter((part) => part !== 'version')
  for (let damages = 1 + Math.floor(random() * 3); damages > 0; damages--) {
    const part = job[pick(parts)] ?? {}
    const key = random() < 0.1 ? 'colour' : pick(Object.keys(part))
    if (random() < 0.15) delete part[key]
    else part[key] = random() < 0.4 ? pick(strange) : 10 ** (random() * 6 - 3) * (random() < 0.2 ? -1 : 1)
  }
  const text = JSON.stringify(job)
  return random() < 0.05 ? text.slice(0, Math.floor(random() * text.length)) : text
}

const numbersOf = (value: unknown): readonly number[] => {
  if (typeof value === 'number') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : []
}

const solved = (text: string): Result<unknown> => {
  const job = parseJobText(text)
  return job.ok ? solveJob(job.value) : job
}

/** @returns what is wrong with how the damaged job of this seed is answered, or null: a whole report or reasons in words */
export const faultWithDamagedJob = (seed: number): string | null => {
  const text = damagedJobText(seed)
  try {
    const result = solved(text)
    if (result.ok) return numbersOf(result.value).every(Number.isFinite) ? null : `a figure that is none: ${text}`
    const wordless = result.problems.find(({ code, params }) => {
      const sentence = t(`problems:${code}`, params)
      return sentence === code || /NaN|\{\{|undefined/.test(sentence)
    })
    if (result.problems.length === 0) return `refused without a reason: ${text}`
    return wordless === undefined ? null : `no words for ${wordless.code}: ${text}`
  } catch (error) {
    return `${error instanceof Error ? error.stack : String(error)}: ${text}`
  }
}

import { MM_PER_INCH } from '../../../geometry/units.ts'
import type { Settings } from '../../../main/contract/entities.ts'
import { factorFor, PX_PER_MM } from '../../ui/scale.ts'

type LengthUnit = Settings['lengthUnit']

/** Factors a line may be drawn with. */
const FACTORS = [0.25, 0.5, 1, 1.5, 2, 3, 5, 10, 20, 50] as const
/** A line is never drawn shorter than this, so that a rule on it keeps some graduations (mm). */
const SHORTEST_MM = 2

/** How a line with a rule on it is drawn. */
export interface RuleScale {
  readonly factor: number
  readonly pxPerMm: number
  /** Length of the line that there is room for. */
  readonly lengthMm: number
}

/** @returns the largest factor at which a line fits in the room */
export const ruleScale = (longestMm: number, roomPx: number): RuleScale => {
  const factor = factorFor(FACTORS, Math.max(longestMm, SHORTEST_MM), roomPx)
  const pxPerMm = factor * PX_PER_MM
  return { factor, pxPerMm, lengthMm: roomPx / pxPerMm }
}

/** Finest graduation of a bench rule: half millimetres, or sixty-fourths of an inch. */
export const graduationMm = (unit: LengthUnit): number => (unit === 'mm' ? 0.5 : MM_PER_INCH / 64)

/** @returns what a rule reads of a length: the nearest graduation */
export const ruleReadsMm = (lengthMm: number, unit: LengthUnit): number => {
  const step = graduationMm(unit)
  return Math.round(lengthMm / step) * step
}

/** Graduations on a rule in multiples of the finest, with the height each rank has (px); figures stand at the last rank. */
const ranks: Readonly<Record<'mm' | 'inch', readonly (readonly [every: number, heightPx: number])[]>> = {
  mm: [
    [1, 6],
    [2, 9],
    [10, 13],
    [20, 17],
  ],
  inch: [
    [1, 6],
    [4, 9],
    [16, 13],
    [64, 17],
  ],
}

/** Closer than this graduations run together (px). */
const CLOSEST_PX = 2.5
/** A length that ends on a graduation holds it, whatever rounding makes of it. */
const DUST = 1e-9
/** Least room that a figure on the rule needs (px). */
const FIGURE_PX = 34

/** One graduation, from the rule's zero. */
export interface Graduation {
  readonly mm: number
  readonly heightPx: number
  /** Written at it, in mm or inches; null: none. */
  readonly figure: string | null
}

/** How many of the finest graduations a figure is written at. */
const figureEvery = (unit: LengthUnit, stepPx: number): number => {
  const choices = unit === 'mm' ? [2, 10, 20, 100] : [16, 64, 128]
  return choices.find((count) => count * stepPx >= FIGURE_PX) ?? (choices.at(-1) as number)
}

/** @returns a figure as it stands on the rule: whole millimetres, inches by quarters */
const figureAt = (k: number, unit: LengthUnit): string => String(unit === 'mm' ? k / 2 : k / 64)

const rankIn = (unit: LengthUnit) => ranks[unit === 'mm' ? 'mm' : 'inch']

/** Ranks of graduations that stand apart at a factor, the finest first. */
const ranksDrawn = (pxPerMm: number, unit: LengthUnit) => {
  const apart = rankIn(unit).filter(([every]) => every * graduationMm(unit) * pxPerMm >= CLOSEST_PX)
  return apart.length > 0 ? apart : rankIn(unit).slice(-1)
}

/** @returns the finest graduation that is drawn (mm): the rule's own finest where the factor allows */
export const finestDrawnMm = (pxPerMm: number, unit: LengthUnit): number =>
  (ranksDrawn(pxPerMm, unit)[0]?.[0] ?? 1) * graduationMm(unit)

/** @returns the graduations that stand on so much of a rule, true to its factor */
export const graduations = (lengthMm: number, pxPerMm: number, unit: LengthUnit): readonly Graduation[] => {
  const step = graduationMm(unit)
  const drawn = ranksDrawn(pxPerMm, unit)
  const finest = drawn[0]?.[0] ?? 1
  const every = Math.max(figureEvery(unit, step * pxPerMm), finest)
  const count = Math.floor(lengthMm / step / finest + DUST)
  return Array.from({ length: count + 1 }, (_, n) => {
    const k = n * finest
    const heightPx = drawn.findLast(([each]) => k % each === 0)?.[1] ?? 0
    return { mm: k * step, heightPx, figure: k % every === 0 ? figureAt(k, unit) : null }
  })
}

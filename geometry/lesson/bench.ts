import { z } from 'zod'
import { type QuantityPath, quantityAt } from '../quantities.ts'

/** Entries of the bench with the quantity each is: what the job file has no place for. */
export const benchQuantities = {
  leverDeg: 'wood.leverDeg',
  skewDeg: 'wood.skewDeg',
  stockMm: 'wood.stockMm',
  shiftMm: 'wood.shiftMm',
  stepMm: 'wood.stepMm',
  capSetbackMm: 'blade.capSetbackMm',
  honedBevelDeg: 'blade.honedBevelDeg',
  setBackMm: 'honing.setBackMm',
  strokesCorner: 'honing.strokes',
  strokesHalfway: 'honing.strokes',
  strokesMiddle: 'honing.strokes',
  leafMm: 'measure.leafMm',
} as const satisfies Record<string, QuantityPath>

const within = (path: QuantityPath, start: number) => {
  const { min, max } = quantityAt(path)
  return z.number().min(min).max(max).default(start)
}

/** What lies on the bench beside the job. */
export const benchSchema = z.strictObject({
  leverDeg: within('wood.leverDeg', 0),
  skewDeg: within('wood.skewDeg', 0),
  stockMm: within('wood.stockMm', 20),
  shiftMm: within('wood.shiftMm', 0),
  stepMm: within('wood.stepMm', 10),
  capSetbackMm: within('blade.capSetbackMm', 0.3),
  honedBevelDeg: within('blade.honedBevelDeg', 30),
  setBackMm: within('honing.setBackMm', 0.02),
  strokesCorner: within('honing.strokes', 5),
  strokesHalfway: within('honing.strokes', 3),
  strokesMiddle: within('honing.strokes', 2),
  leafMm: within('measure.leafMm', 0.1),
  /** Which corner carries the dot, at the wheel, back up. */
  dotCorner: z.enum(['left', 'right']).default('left'),
  /** Which way the rim goes under the edge. */
  rotation: z.enum(['intoEdge', 'awayFromEdge']).default('intoEdge'),
  cooling: z.enum(['wet', 'dry']).default('wet'),
})
export type Bench = z.output<typeof benchSchema>

import type { Job } from './job.ts'
import { asSet, type Doubt, doubtsOf, type Shift } from './measured.ts'
import { type Edge, quickGrind } from './quickGrind.ts'
import type { UncertaintyPart, UncertaintyReport } from './report.ts'
import { bevelsFor, type SetUp } from './setUp.ts'
import { degFromRad } from './units.ts'

/**
 * What the user's measuring leaves unknown: standard deviations of bevel, relief and skew from those of the inputs, taken
 * as independent and small, so that each moves a figure in proportion and squares add (JCGM 100:2008, 5.1.2). Slopes are
 * central differences over one standard deviation each way: of the triangle for the bevel, of a quick grind for the edge.
 *
 * Independent check: tests/geometry draws the inputs together some hundred times over.
 */

/** Half of the difference between both ways; a way that leads nowhere is left out, and the whole of the other taken. */
const halfBetween = (more: number | null, less: number | null, middle: number | null): number | null => {
  if (more !== null && less !== null) return (more - less) / 2
  if (middle === null) return null
  if (more !== null) return more - middle
  return less === null ? null : middle - less
}

const bevelDeg = (job: Job, { seatOffsetMm, seatOffsetPerMm, projectionMm }: SetUp, nominal: Job): number | null => {
  const wheelRadiusMm = job.station.wheelDiameterMm / 2
  const offBy = job.fixture.seatOffsetMm - nominal.fixture.seatOffsetMm
  const seat = { atEdgeMm: seatOffsetMm + offBy - seatOffsetPerMm * projectionMm, perMm: seatOffsetPerMm }
  const { projectionMm: P, barDistanceMm: C } = job.aim
  const found = bevelsFor({ wheelRadiusMm, seat }, P as number, C as number)[0]
  return found === undefined ? null : degFromRad(found)
}

/** What one input's standard deviation does, one way of being off at a time. */
interface Effect {
  readonly bevelDeg: number | null
  readonly leftMm: number | null
  readonly rightMm: number | null
}

interface Nominal {
  readonly job: Job
  readonly setUp: SetUp
  readonly edge: Edge | null
}

const effectOf = ({ job, setUp, edge }: Nominal, shift: Shift, deviation: number): Effect => {
  const [more, less] = [shift(job, deviation), shift(job, -deviation)]
  const [edgeMore, edgeLess] = [quickGrind(more), quickGrind(less)]
  const half = (read: (edge: Edge) => number) =>
    halfBetween(edgeMore && read(edgeMore), edgeLess && read(edgeLess), edge && read(edge))
  return {
    bevelDeg: halfBetween(bevelDeg(more, setUp, job), bevelDeg(less, setUp, job), degFromRad(setUp.bevelRad)),
    leftMm: half(({ leftMm }) => leftMm),
    rightMm: half(({ rightMm }) => rightMm),
  }
}

/** Skew of the corners' chord by one effect; small, so that the angle is its tangent. */
const skewOf = ({ leftMm, rightMm }: Effect, { blade }: Job): number | null =>
  leftMm === null || rightMm === null ? null : degFromRad((rightMm - leftMm) / blade.widthMm)

/** Root of the sum of squares; unknown if any is. */
const together = (effects: readonly (number | null)[]): number | null => {
  let sum = 0
  for (const effect of effects) {
    if (effect === null) return null
    sum += effect * effect
  }
  return Math.sqrt(sum)
}

const meanOf = ({ leftMm, rightMm }: Effect): number | null =>
  leftMm === null || rightMm === null ? null : (leftMm + rightMm) / 2

const partOf = (job: Job, input: Doubt['input'], effects: readonly Effect[]): UncertaintyPart => ({
  input,
  bevelAngleDeg: together(effects.map((effect) => effect.bevelDeg)),
  reliefMm: together(effects.map(meanOf)),
  skewDeg: together(effects.map((effect) => skewOf(effect, job))),
})

/** Standard deviations that a job's `tolerances` leave, in all and by input. Costs some twenty quick grinds. */
export const uncertaintyOf = (job: Job, setUp: SetUp): UncertaintyReport => {
  const set = asSet(job, setUp)
  const nominal = { job: set, setUp, edge: quickGrind(set) }
  const byInput = doubtsOf(set).map(({ input, deviation, shifts }) => ({
    input,
    effects: shifts.map((shift) => effectOf(nominal, shift, deviation)),
  }))
  const all = byInput.flatMap(({ effects }) => effects)
  return {
    bevelAngleDeg: together(all.map((effect) => effect.bevelDeg)),
    reliefLeftMm: together(all.map((effect) => effect.leftMm)),
    reliefRightMm: together(all.map((effect) => effect.rightMm)),
    skewDeg: together(all.map((effect) => skewOf(effect, job))),
    parts: byInput.map(({ input, effects }) => partOf(job, input, effects)),
  }
}

import { describe, expect, it } from 'vitest'
import { creep, forget, isNear, NEAR_MM } from '../../geometry/clearance.ts'
import { press } from '../../geometry/contact.ts'
import type { GrindState } from '../../geometry/grind.ts'
import { type Pose, place } from '../../geometry/pose.ts'
import { seeded } from '../support/seeded.ts'
import { type Changes, exampleJob, ground } from './example.ts'

const POSES = 400
const SEED = 7
const random = seeded(SEED)
/** A number from -most to most. */
const upTo = (most: number): number => (2 * random() - 1) * most

const kinds: readonly (Changes & { readonly name: string })[] = [
  { name: 'steered', station: { wheelWidthMm: 80 } },
  {
    name: 'rocking, every error of the set-up',
    station: { wheelWidthMm: 80, wheelDiameterMm: 120 },
    fixture: { kind: 'rocking', rollHeightMm: 6 },
    motion: { rollLeftDeg: 2, rollRightDeg: 3 },
    errors: { barAskewDeg: 0.5, barRollDeg: 2, mountingAskewDeg: 1 },
  },
]

/** The pose the grind ended at, moved about by as much as some steps of a grind do, or by a share of that. */
const movedPose = ({ weighing: { pose }, barDistanceMm }: GrindState, share: number): Pose => ({
  depthSlope: pose.depthSlope + upTo((share * 0.3) / barDistanceMm),
  turnSlope: pose.turnSlope + upTo(share * 0.02),
  traverseMm: pose.traverseMm,
  rollSlope: upTo(share * 0.01),
})

const standAt = (state: GrindState, pose: Pose): void => place(state, pose, state.weighing.scales.placed)

const pressAt = (state: GrindState, pose: Pose): void => {
  const { scales } = state.weighing
  standAt(state, pose)
  press(state, state.vMm, scales.placed, scales, 20, 0)
}

/** How far each node stands off the wheel where the blade stands now, column by column, from the forms alone. */
const standOffMm = ({ weighing, vMm, uMm, nMm, rim }: GrindState): readonly (readonly number[])[] => {
  const { d, h } = weighing.scales.placed.forms
  return Array.from(uMm, (u, i) =>
    Array.from(nMm, (n, j) => {
      const v = vMm[i * nMm.length + j] as number
      const across = h.atZero + h.perU * u + h.perV * v + h.perN * n
      return Math.hypot(d.atZero + d.perU * u + d.perV * v + d.perN * n, across) - rim.radiusMm
    }),
  )
}

describe.each(kinds)('$name', (changes) => {
  const state = ground(exampleJob({ ...changes, grid: { across: 57, through: 9 } }), 40)
  const { clearance, placed } = state.weighing.scales

  it('no column stands nearer than its clearance says, however the blade moved', () => {
    let known = 0
    let moreThanMoved = 0
    for (let k = 0; k < POSES; k++) {
      forget(clearance)
      pressAt(state, movedPose(state, 1))
      const before = clearance.columnMm.slice()
      standAt(state, movedPose(state, 1))
      creep(state, placed.forms, clearance)
      for (const [i, rows] of standOffMm(state).entries()) {
        const clearMm = clearance.columnMm[i] as number
        if (clearMm <= 0) continue
        known++
        if (clearMm > (before[i] as number)) moreThanMoved++
        expect(clearMm).toBeLessThanOrEqual(Math.min(...rows))
      }
    }
    expect(known).toBeGreaterThan(1000)
    // What moves away is known to stand further off than before.
    expect(moreThanMoved).toBeGreaterThan(known / 10)
  })

  it('past the rows kept for a pose nothing touches at any pose near to it', () => {
    let near = 0
    let entered = 0
    for (let k = 0; k < POSES; k++) {
      forget(clearance)
      const pose = movedPose(state, 1)
      pressAt(state, pose)
      const touched = standOffMm(state)
      standAt(state, { ...pose, depthSlope: pose.depthSlope + upTo((1.2 * NEAR_MM) / state.barDistanceMm) })
      if (!isNear(state, placed.forms, clearance)) continue
      near++
      for (const [i, rows] of standOffMm(state).entries())
        for (const [j, offMm] of rows.entries()) {
          if (offMm >= 0) continue
          expect(j).toBeLessThan(clearance.rows[i] as number)
          if ((touched[i]?.[j] as number) >= 0) entered++
        }
    }
    expect(near).toBeGreaterThan(POSES / 4)
    expect(entered).toBeGreaterThan(0)
  })
})

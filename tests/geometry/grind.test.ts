import { describe, expect, it } from 'vitest'
import { edgeOf } from '../../geometry/edge.ts'
import { envelopeAt } from '../../geometry/envelope.ts'
import { freedomOf } from '../../geometry/freedom.ts'
import { advance, restore, snapshot, startGrind } from '../../geometry/grind.ts'
import { hollowOf } from '../../geometry/hollow.ts'
import type { Job, JobInput } from '../../geometry/job.ts'
import { planMotion } from '../../geometry/motion.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import type { Result } from '../../geometry/result.ts'
import { setUpOf, setUpReport } from '../../geometry/setUp.ts'
import { radFromDeg } from '../../geometry/units.ts'

const found = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

/** A low-angle jack iron on a steered fixture, two turns each side. */
const input = (motion: JobInput['motion'] = {}, grid = { across: 57, through: 9 }): JobInput => ({
  version: 1,
  blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up', currentBevelDeg: 25 },
  station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
  fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8 },
  aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5 },
  motion: { stopTurnsLeft: 2, stopTurnsRight: 2, ...motion },
  grid,
})

const jobOf = (motion?: JobInput['motion'], grid?: { across: number; through: number }): Job =>
  found(parseJob(input(motion, grid)))

const ground = (job: Job) => {
  const setUp = found(setUpOf(job))
  const motion = planMotion(job, found(freedomOf(job, setUp)))
  return found(advance(found(startGrind(job)), motion, job.motion.sweeps * job.motion.stepsPerSweep))
}

describe('the set-up triangle', () => {
  it('gives the bar and its sensitivities of the worked example', () => {
    const job = jobOf()
    const report = setUpReport(job, found(setUpOf(job)))
    expect(report.barDistanceMm).toBeCloseTo(207.57273, 5)
    expect(report.bevelPerProjectionDegPerMm).toBeCloseTo(-0.67495, 5)
    expect(report.bevelPerBarDistanceDegPerMm).toBeCloseTo(0.76631, 5)
    expect(report.bevelPerWheelDiameterDegPerMm).toBeCloseTo(-0.30705, 5)
  })

  it('finds the same bevel and projection back from the other two', () => {
    const { barDistanceMm } = found(setUpOf(jobOf()))
    const bevel = found(
      setUpOf(found(parseJob({ ...input(), aim: { projectionMm: 130, barDistanceMm, reliefMm: 0.5 } }))),
    )
    const reach = found(
      setUpOf(found(parseJob({ ...input(), aim: { bevelAngleDeg: 25, barDistanceMm, reliefMm: 0.5 } }))),
    )
    expect(bevel.bevelRad).toBeCloseTo(radFromDeg(25), 12)
    expect(reach.projectionMm).toBeCloseTo(130, 10)
  })
})

describe('the hollow', () => {
  it('keeps the segment formula: b + asin(c / 2R) is the chord angle', () => {
    const { chordMm, chordAngleDeg } = hollowOf(125, radFromDeg(25), 3.2)
    expect(chordAngleDeg).toBeCloseTo(25 + (Math.asin(chordMm / 250) * 180) / Math.PI, 9)
  })
})

describe('cuts at constant depth', () => {
  it('are the upper envelope of the lines they are made of', () => {
    for (const x of [0, 1, 2.5, 10, 28.5]) {
      let sampled = Number.NEGATIVE_INFINITY
      for (let k = 0; k <= 10_000; k++) {
        const th = (radFromDeg(1.2) * k) / 10_000
        sampled = Math.max(sampled, 130 - (130 - x * Math.sin(th)) / Math.cos(th))
      }
      expect(envelopeAt(130, x, Math.tan(radFromDeg(1.2)))).toBeCloseTo(sampled, 8)
    }
    expect(envelopeAt(130, 28.5, Math.tan(radFromDeg(1.2)))).toBeCloseTo(0.568472, 6)
  })
})

describe('the contact grind', () => {
  it('agrees with an independent solver: relief after 120 sweeps at two turns', () => {
    const { uMm, vMm, throughCount } = ground(jobOf())
    const edge = edgeOf(uMm, vMm, throughCount)
    expect(edge.reliefLeftMm).toBeCloseTo(0.3346, 3)
    expect(edge.reliefRightMm).toBeCloseTo(0.3348, 3)
  })

  it('removes exactly the volume it was told to, and no node grows', () => {
    const state = ground(jobOf({ sweeps: 20 }))
    let volumeMm3 = 0
    for (let at = 0; at < state.vMm.length; at++) {
      const goneMm = (state.vMm[at] as number) - (state.vStartMm[at] as number)
      expect(goneMm).toBeGreaterThanOrEqual(0)
      const i = Math.floor(at / state.throughCount)
      const widthMm = (state.columnEdgesMm[i + 1] as number) - (state.columnEdgesMm[i] as number)
      volumeMm3 += goneMm * widthMm * (state.rowHeightsMm[at % state.throughCount] as number)
    }
    expect(Math.abs(volumeMm3 / 10 - 1)).toBeLessThan(1e-9)
  })

  it('mirrors when stops and start side are mirrored', () => {
    const coarse = { across: 21, through: 5 }
    const right = ground(jobOf({ sweeps: 6, stopTurnsLeft: 2, stopTurnsRight: 1, startSide: 'right' }, coarse))
    const left = ground(jobOf({ sweeps: 6, stopTurnsLeft: 1, stopTurnsRight: 2, startSide: 'left' }, coarse))
    for (let i = 0; i < 21; i++)
      for (let j = 0; j < 5; j++)
        expect(Math.abs((right.vMm[i * 5 + j] as number) - (left.vMm[(20 - i) * 5 + j] as number))).toBeLessThan(1e-9)
  })

  it('goes on from a snapshot to the same last bit', () => {
    const job = jobOf({ sweeps: 4 }, { across: 21, through: 5 })
    const motion = planMotion(job, found(freedomOf(job, found(setUpOf(job)))))
    const state = found(startGrind(job))
    advance(state, motion, 31)
    const kept = snapshot(state)
    advance(state, motion, 40)
    const straight = state.vMm.slice()
    restore(state, kept)
    advance(state, motion, 40)
    expect(state.vMm).toEqual(straight)
  })

  it('leaves the edge straight in a square position', () => {
    const still = input({ sweeps: 20, stopTurnsLeft: 0, stopTurnsRight: 0 })
    const wide = { ...still, station: { ...still.station, wheelWidthMm: 80 } }
    const { uMm, vMm, throughCount } = ground(found(parseJob(wide)))
    expect(edgeOf(uMm, vMm, throughCount).reliefLeftMm).toBeLessThan(1e-9)
  })
})

import { describe, expect, it } from 'vitest'
import { type AimCurve, aimCurveOver } from '../../geometry/aimCurve.ts'
import { freedomOf } from '../../geometry/freedom.ts'
import { advance, restore, snapshot } from '../../geometry/grind.ts'
import type { JobInput, Setting } from '../../geometry/job.ts'
import { planMotion } from '../../geometry/motion.ts'
import { deviationMm, nearestScale } from '../../geometry/nearness.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { planSchedule, type Schedule } from '../../geometry/schedule.ts'
import type { SchedulePlan } from '../../geometry/schedulePlans.ts'
import { settingOf, withSettings } from '../../geometry/scheduleSettings.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { begin, type Changes, edgeOfState, exampleJob, found } from './example.ts'

const arc = (reliefMm: number): AimCurve => ({ kind: 'arc', reliefMm })

const plan = (changes: Changes, curve: AimCurve, mostSettings: 1 | 2 | 3, nearEnoughMm?: number): Schedule =>
  found(
    planSchedule(
      exampleJob(changes),
      curve,
      { mostSettings, ...(nearEnoughMm === undefined ? {} : { nearEnoughMm }) },
      () => {},
      () => false,
    ),
  )

const planAt = ({ plans }: Schedule, k: number): SchedulePlan => plans[k] as SchedulePlan

describe('nearness', () => {
  it('is half of what the bounds are apart, after the best offset: worked by hand', () => {
    expect(deviationMm([5, 6, 5], [0, 0, 0])).toBe(0.5)
    // 2 x (0, 1, 4) - (0, 2, 8) is nothing.
    expect(deviationMm([0, 1, 4], [0, 2, 8], 2)).toBe(0)
  })

  it('a roof stays an eighth of its height from a parabola at best: |x| - x^2 lies between 0 and 1/4', () => {
    const x = Array.from({ length: 81 }, (_, i) => i / 40 - 1)
    const { scale, deviationMm: nearest } = nearestScale(
      x.map((at) => Math.abs(at)),
      x.map((at) => at * at),
    )
    expect(scale).toBeCloseTo(1, 6)
    expect(nearest).toBeCloseTo(1 / 8, 9)
  })
})

/** One schedule of the independent solver in the design: what follows 400 sweeps at two turns, deviation and relief in mm. */
const figures: readonly (readonly [string, JobInput['motion'] & object, number, number, number])[] = [
  [
    '10 sweeps with stops at 0.3 deg and reach 5',
    { yawLeftDeg: 0.3, yawRightDeg: 0.3, fingerReachMm: 5 },
    10,
    0.0185,
    0.42,
  ],
  ['30 sweeps with 0.7 deg and reach 12', { yawLeftDeg: 0.7, yawRightDeg: 0.7, fingerReachMm: 12 }, 30, 0.0125, 0.29],
  ['20 sweeps at one turn', { stopTurnsLeft: 1, stopTurnsRight: 1 }, 20, 0.0226, 0.38],
]

describe('schedules of an independent solver, deviation within 0.5 um and relief within 5 um', () => {
  const { state, motion } = begin(exampleJob({ motion: { sweeps: 400 } }))
  const aim = edgeOfState(state).edgeUMm.map(found(aimCurveOver(arc(0.5), 57)))
  found(advance(state, motion, 400 * 24))
  const formed = snapshot(state)
  /** Greatest deviation from the nearest arc, and that arc's relief. */
  const nearestArc = () => {
    const { scale, deviationMm: off } = nearestScale(edgeOfState(state).edgeVMm, aim)
    return { off: off / scale, reliefMm: 0.5 / scale }
  }

  it('400 sweeps at two turns: 0.058 of 0.55', () => {
    expect(Math.abs(nearestArc().off - 0.0583)).toBeLessThan(5e-4)
    expect(Math.abs(nearestArc().reliefMm - 0.549)).toBeLessThan(5e-3)
  })

  it.each(figures)('then %s', (_, change, sweeps, off, reliefMm) => {
    const job = exampleJob({ motion: { sweeps: 400, schedule: [{ ...change, sweeps }] } })
    restore(state, formed)
    found(advance(state, planMotion(job, found(freedomOf(job, found(setUpOf(job))))), sweeps * 24))
    expect(Math.abs(nearestArc().off - off)).toBeLessThan(5e-4)
    expect(Math.abs(nearestArc().reliefMm - reliefMm)).toBeLessThan(5e-3)
  })
})

describe('a schedule for an arc of 0.5 mm on an iron of 57 mm', () => {
  const shares: number[] = []
  const schedule = found(
    planSchedule(
      exampleJob(),
      arc(0.5),
      { mostSettings: 3 },
      (share) => shares.push(share),
      () => false,
    ),
  )
  const [one, two, three] = [planAt(schedule, 0), planAt(schedule, 1), planAt(schedule, 2)]

  it('two settings come at least twice as near as one, three no less near than two', () => {
    expect(one.settings).toHaveLength(1)
    expect(two.settings).toHaveLength(2)
    expect(one.deviationMm).toBeGreaterThan(0.05)
    expect(two.deviationMm).toBeLessThan(one.deviationMm / 2)
    expect(three.deviationMm).toBeLessThanOrEqual(two.deviationMm)
    expect(schedule).toMatchObject({ reachable: true, code: 'reachable' })
  })

  it('reaches the relief at both corners within twice its deviation', () => {
    for (const { reliefLeftMm, reliefRightMm, deviationMm: off } of [one, two, three]) {
      expect(Math.abs(reliefLeftMm - 0.5)).toBeLessThan(2 * off)
      expect(Math.abs(reliefRightMm - 0.5)).toBeLessThan(2 * off)
    }
  })

  it('is told in what can be set: whole mm, pairs of sweeps, hundredths of a turn, both sides alike', () => {
    for (const { stopTurnsLeft, stopTurnsRight, fingerReachMm, sweeps } of three.settings) {
      expect(fingerReachMm % 1).toBe(0)
      expect(sweeps % 2).toBe(0)
      expect(Math.abs(stopTurnsLeft * 100 - Math.round(stopTurnsLeft * 100))).toBeLessThan(1e-9)
      expect(stopTurnsRight).toBe(stopTurnsLeft)
    }
    expect(three.sweeps).toBe(three.settings.reduce((sum, { sweeps }) => sum + sweeps, 0))
  })

  it('tells its progress forwards, from little to all', () => {
    expect(shares.every((share, k) => k === 0 || share >= (shares[k - 1] as number))).toBe(true)
    expect(shares[0]).toBeLessThan(0.05)
    expect(shares.at(-1)).toBe(1)
  })
})

describe('other schedules', () => {
  const swapped = (setting: Setting): Setting => ({
    ...setting,
    stopTurnsLeft: setting.stopTurnsRight,
    stopTurnsRight: setting.stopTurnsLeft,
  })

  it('the mirrored job has the mirrored stops', () => {
    const right = plan({ fixture: { pivotOffsetMm: 6 } }, arc(0.2), 2)
    const left = plan({ fixture: { pivotOffsetMm: -6 }, motion: { startSide: 'left' } }, arc(0.2), 2)
    expect(planAt(right, 0).settings[0]?.stopTurnsLeft).not.toBe(planAt(right, 0).settings[0]?.stopTurnsRight)
    for (const k of [0, 1]) {
      expect(planAt(left, k).settings).toEqual(planAt(right, k).settings.map(swapped))
      expect(planAt(left, k).deviationMm).toBeCloseTo(planAt(right, k).deviationMm, 9)
    }
  })

  it('comes out of the whole engine as told: the job that takes it is a job, and its report has that edge', () => {
    const two = planAt(plan({}, arc(0.1), 2), 1)
    const job = found(parseJob(JSON.parse(JSON.stringify(withSettings(exampleJob(), two.settings)))))
    const { edgeUMm, edgeVMm, reliefLeftMm } = found(solveJob(job)).grind
    expect(two.settings).toHaveLength(2)
    expect(deviationMm(edgeVMm, edgeUMm.map(found(aimCurveOver(arc(0.1), 57))))).toBe(two.deviationMm)
    expect(reliefLeftMm).toBe(two.reliefLeftMm)
  })

  it('straight with eased corners: a second setting with the stops near home brings it three times as near', () => {
    const schedule = plan({}, { kind: 'easedCorners', reliefMm: 0.2, flatShare: 0.4 }, 2)
    expect(planAt(schedule, 1).deviationMm).toBeLessThan(planAt(schedule, 0).deviationMm / 3)
  })

  it('a rocking fixture is told its rolls, one without pitch its yaws', () => {
    const [rocked] = planAt(plan({ fixture: { kind: 'rocking' } }, arc(0.1), 1), 0).settings
    expect(rocked?.rollLeftDeg).toBeGreaterThan(0)
    expect(rocked).toMatchObject({ stopTurnsLeft: 0, yawLeftDeg: null })
    const byYaw: Changes = { fixture: { screwPitchMm: null }, motion: { yawLeftDeg: 1, yawRightDeg: 1 } }
    const [yawed] = planAt(plan(byYaw, arc(0.1), 1), 0).settings
    expect(yawed?.yawRightDeg).toBeGreaterThan(0)
    expect(yawed).toMatchObject({ stopTurnsLeft: 0, rollLeftDeg: null })
  })

  it('turns are rounded, but never past the end of the screw', () => {
    // The steepest yaw, 15 deg, on an arm of 12: 12 tan(15) / 0.8 = 4.0192 turns.
    const job = exampleJob({ fixture: { guideArmMm: 12 }, motion: { stopTurnsLeft: 0, stopTurnsRight: 0 } })
    const freedom = found(freedomOf(job, found(setUpOf(job))))
    const turnsAt = (turns: number) => {
      const slope = (turns * 0.8) / 12
      return settingOf(job, { slopeLeft: slope, slopeRight: slope, fingerReachMm: 9, sweeps: 5 }, freedom).stopTurnsLeft
    }
    expect(turnsAt(1.2349)).toBe(1.23)
    expect(turnsAt(4.0192)).toBe(4.01)
  })

  it('for a straight edge the stops are home', () => {
    const { plans, code } = plan({ station: { wheelWidthMm: 80 } }, arc(0), 2)
    expect(code).toBe('reachable')
    expect(plans[1]?.settings).toMatchObject([{ stopTurnsLeft: 0, stopTurnsRight: 0 }])
    expect(plans[1]?.deviationMm).toBeLessThan(1e-9)
  })

  it.each<readonly [string, Changes, number, Schedule['code']]>([
    ['stops that end before', {}, 8, 'beyondStopTravel'],
    ['fingers that stay in the middle', { motion: { fingerReachMm: 15 } }, 0.5, 'fingersTooShort'],
    [
      'a wheel that misses the corners',
      { station: { wheelWidthMm: 30 }, motion: { traverseMm: 5 } },
      0.5,
      'wheelTooNarrow',
    ],
    ['sweeps that take next to nothing', { motion: { removalPerSweepMm3: 0.002 } }, 0.5, 'tooManySweeps'],
    ['a square fixture', { fixture: { kind: 'square' } }, 0.5, 'squareFixture'],
    ['a hand without stops', { fixture: { kind: 'freehand' } }, 0.5, 'noStops'],
  ])('cannot be had from %s', (_, changes, reliefMm, code) => {
    expect(plan(changes, arc(reliefMm), 2)).toEqual({ plans: [], reachable: false, code })
  })

  it('names a nearness that one setting cannot give', () => {
    expect(plan({}, arc(0.1), 1, 0.002)).toMatchObject({ reachable: false, code: 'notNearEnough' })
    expect(plan({}, arc(0.1), 1, 0.02).code).toBe('reachable')
  })

  it('stops at once when cancelled, whenever that is', () => {
    for (const after of [0, 30]) {
      let asked = 0
      let trials = 0
      const result = planSchedule(
        exampleJob(),
        arc(0.5),
        { mostSettings: 3 },
        () => trials++,
        () => asked++ >= after,
      )
      expect(result.ok ? null : result.problems[0]?.code).toBe('cancelled')
      expect(trials).toBeLessThan(after + 12)
    }
  })

  it('refuses a curve that no edge has', () => {
    const result = planSchedule(
      exampleJob(),
      arc(-1),
      { mostSettings: 2 },
      () => {},
      () => false,
    )
    expect(result.ok ? null : result.problems[0]?.code).toBe('tooSmall')
  })
})

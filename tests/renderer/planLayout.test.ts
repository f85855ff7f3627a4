import { describe, expect, test } from 'vitest'
import { planOf } from '../../geometry/aim.ts'
import type { Job } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { type Tool, toolKinds } from '../../main/contract/entities.ts'
import { wantedDepthMm } from '../../renderer/glass/wantedDepth.ts'
import {
  countableSweeps,
  curveIn,
  curveKeyOf,
  curveKeys,
  settableTurns,
  stopsMeet,
  withCurve,
  withStops,
} from '../../renderer/plan/aim.ts'
import { certaintyOf } from '../../renderer/plan/certainty.ts'
import { meetsPreset, presetsFor, withPreset } from '../../renderer/plan/presets.ts'
import { ridgeOf, withRidge, withWidth } from '../../renderer/plan/ways.ts'
import { worthTelling } from '../../renderer/plan/worthTelling.ts'
import { barAxisMm, machineFigures, placeBase, setUpTiltRad, under } from '../../renderer/scene/placement.ts'
import { foundKeyOf } from '../../renderer/setUp/found.ts'
import { triangleOf } from '../../renderer/setUp/triangle.ts'
import { barLength, DEPTH, factorFor } from '../../renderer/ui/scale.ts'

const job = (): Job => {
  const parsed = parseJob({
    version: 1,
    blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up' },
    station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
    fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8 },
    aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5 },
  })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  return parsed.value
}

describe('the aim', () => {
  test('a curve is given in one way at a time', () => {
    const other = withCurve(job(), 'edgeRadiusMm', 812)
    expect(curveKeyOf(other)).toBe('edgeRadiusMm')
    expect([other.aim.reliefMm, other.aim.woodReliefMm, other.aim.edgeRadiusMm]).toEqual([null, null, 812])
    expect(parseJob(other).ok).toBe(true)
  })

  test.each([12, 45, 55])(
    'looked at in any way at a seat of %d degrees, a relief comes back as it was',
    (seatAngleDeg) => {
      for (const reliefMm of [0.01, 0.07, 0.25, 0.5]) {
        const given = job()
        const seated = withCurve({ ...given, blade: { ...given.blade, seatAngleDeg } }, 'reliefMm', reliefMm)
        const lookedAt = curveKeys.reduce((now, key) => {
          const plan = planOf(now)
          return plan.ok ? withCurve(now, key, curveIn(plan.value, key)) : now
        }, seated)
        const plan = planOf(lookedAt)
        expect(plan.ok && curveIn(plan.value, 'reliefMm')).toBe(reliefMm)
      }
    },
  )

  test('a schedule that is no nearer than one with fewer settings is not offered', () => {
    const plan = (deviationMm: number) => ({ settings: [], deviationMm, reliefLeftMm: 0, reliefRightMm: 0, sweeps: 0 })
    const plans = [plan(0.006), plan(0.004), plan(0.004)]
    expect(worthTelling(plans)).toEqual(plans.slice(0, 2))
    expect(worthTelling([plan(0.006), plan(0.008), plan(0.001)])).toEqual([plan(0.006), plan(0.001)])
  })

  test('a wanted arc lies at its relief in the corners', () => {
    // R = (28.5^2 + 0.5^2) / (2 x 0.5) = 812.5 for 0.5 mm on 57 mm.
    expect(wantedDepthMm(812.5, 28.5)).toBeCloseTo(0.5, 9)
    expect(wantedDepthMm(812.5, 0)).toBe(0)
    expect(wantedDepthMm(null, 28.5)).toBe(0)
  })

  test('stops are set to twentieths of a turn, and a yaw no longer stands instead of them', () => {
    expect([1.849, 0.024, 0.026, 2].map(settableTurns)).toEqual([1.85, 0, 0.05, 2])
    const turns = { left: 1.849, right: 1.73, reachable: true, code: 'reachable' } as const
    const before = { ...job(), motion: { ...job().motion, yawLeftDeg: 1 } }
    expect(stopsMeet(before, turns)).toBe(false)
    const after = withStops(before, { turnsForAim: turns, forAim: null })
    expect([after.motion.stopTurnsLeft, after.motion.stopTurnsRight, after.motion.yawLeftDeg]).toEqual([
      1.85,
      1.75,
      null,
    ])
    expect(stopsMeet(after, turns)).toBe(true)
  })

  test('come with the sweeps it takes, as a person counts them', () => {
    const forAim = { leftDeg: 1, rightDeg: 1, sweeps: 444, reachable: true, code: 'reachable' } as const
    const turns = { left: 1, right: 1, reachable: true, code: 'reachable' } as const
    const before = job()
    expect(withStops(before, { turnsForAim: turns, forAim }).motion.sweeps).toBe(450)
    const short = { ...forAim, reachable: false, code: 'beyondStopTravel' } as const
    expect(withStops(before, { turnsForAim: turns, forAim: short }).motion.sweeps).toBe(before.motion.sweeps)
    expect([0, 3, 91, 444, 1331, 99_999].map(countableSweeps)).toEqual([0, 10, 100, 450, 1400, 5000])
  })
})

describe('common practice', () => {
  /** Narrowest iron of a kind (mm), as the trade's table gives it. */
  const narrowestMm = (kind: Tool['kind']) =>
    (({ jack: 44, fore: 51, scrub: 32, block: 35 }) as Record<string, number>)[kind] ?? 44

  const seats = [12, 20, 45, 55]
  test.each(toolKinds)('%s: no corner digs in at any seat, and the job can be read', (kind) => {
    for (const seatAngleDeg of seats) {
      const widthMm = narrowestMm(kind)
      const presets = presetsFor({ kind, seatAngleDeg, widthMm })
      if (presets.length === 0) return expect(kind).toBe('other')
      for (const preset of presets) {
        const camberMm =
          'woodReliefMm' in preset
            ? preset.woodReliefMm
            : 'edgeRadiusMm' in preset
              ? wantedDepthMm(preset.edgeRadiusMm, widthMm / 2) * Math.sin((seatAngleDeg * Math.PI) / 180)
              : Number.POSITIVE_INFINITY
        expect(camberMm).toBeGreaterThanOrEqual(preset.shavingDepthMm)
        const planned = withPreset(job(), preset)
        expect(parseJob(planned).ok).toBe(true)
        expect(meetsPreset(planned, preset)).toBe(true)
      }
      expect(new Set(presets.map(({ purpose }) => purpose)).size).toBe(presets.length)
    }
  })

  test('a jack of 44 mm at 12 degrees: 250 - sqrt(250^2 - 22^2) = 0.96988, x sin 12 = 0.20165, so a shaving of 0.20', () => {
    const jack = { kind: 'jack', widthMm: 44 } as const
    const usual = (seatAngleDeg: number) =>
      presetsFor({ ...jack, seatAngleDeg }).find(({ purpose }) => purpose === 'usual')
    expect(usual(12)).toMatchObject({ edgeRadiusMm: 250, shavingDepthMm: 0.2 })
    expect(usual(45)).toMatchObject({ edgeRadiusMm: 250, shavingDepthMm: 0.4 })
  })

  test('speaks of no seat where there is none', () => {
    expect(presetsFor({ kind: 'smoothing', seatAngleDeg: null, widthMm: 50 })).toEqual([])
    expect(presetsFor({ kind: 'chisel', seatAngleDeg: null, widthMm: 24 })).toHaveLength(1)
  })
})

describe('how sure the free play is', () => {
  const reported = (turns: number) => {
    const of = job()
    const solved = solveJob({ ...of, motion: { ...of.motion, stopTurnsLeft: turns, stopTurnsRight: turns } })
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems))
    return solved.value
  }

  test("is the relief's share of doubt, and is not told where the doubt is as great as the relief", () => {
    const set = reported(2)
    const { grind, uncertainty } = set
    const doubtMm = ((uncertainty.reliefLeftMm ?? 0) + (uncertainty.reliefRightMm ?? 0)) / 2
    const share = doubtMm / ((grind.reliefLeftMm + grind.reliefRightMm) / 2)
    // About 0.064 of 0.321 mm.
    expect(share).toBeCloseTo(0.2, 2)
    expect(certaintyOf(set, 1.5).freePlayMm).toBeCloseTo(1.5 * share, 9)
    // Closed stops leave some 0.003 mm of relief, known to 0.06: as a share of the free play that would be tens of millimetres.
    expect(certaintyOf(reported(0), 1.5).freePlayMm).toBeNull()
  })
})

describe('a curve said by what it does to the wood', () => {
  const sine = Math.sin((12 * Math.PI) / 180)

  test('a shaving 40 mm wide at 0.1 deep and a 12 degree seat: rise 0.48097, r = (20^2 + 0.48097^2) / (2 x 0.48097) = 416', () => {
    const said = withWidth(job(), 40, sine)
    expect(said.aim).toMatchObject({ edgeRadiusMm: 416, reliefMm: null, woodReliefMm: null })
    expect(withWidth(job(), 57, sine).aim).toMatchObject({ reliefMm: 0, edgeRadiusMm: null })
  })

  test('ridges of 0.02 mm with passes 30 mm apart: rise 0.096194, r = (15^2 + 0.0962^2) / 0.192389 = 1170', () => {
    expect(withRidge(job(), 30, 0.02, sine).aim.edgeRadiusMm).toBe(1170)
    const plan = { reliefMm: 0, woodReliefMm: 0, edgeRadiusMm: 1170, shavingWidthMm: null }
    expect(ridgeOf(plan, 30, sine)).toBeCloseTo(0.02, 4)
  })
})

describe('the triangle in the drawing', () => {
  const distance = ([ax, ay]: readonly number[], [bx, by]: readonly number[]) =>
    Math.hypot((ax ?? 0) - (bx ?? 0), (ay ?? 0) - (by ?? 0))

  test.each([0, 40])('has the lengths of the set-up, bar %d mm beside the axle', (barOffsetMm) => {
    const setUp = setUpOf(job())
    if (!setUp.ok) throw new Error('no set-up')
    const { barDistanceMm, projectionMm, seatOffsetMm, wheelRadiusMm, bevelRad } = setUp.value
    const triangle = triangleOf(setUp.value, barOffsetMm)
    expect(distance(triangle.bar, [0, 0])).toBeCloseTo(barDistanceMm, 9)
    expect(distance(triangle.edge, [0, 0])).toBeCloseTo(wheelRadiusMm, 9)
    expect(distance(triangle.onBlade(projectionMm, seatOffsetMm), triangle.bar)).toBeCloseTo(0, 9)
    // The wheel's axis in the blade frame: v = -R sin b, n = R cos b.
    const axis = triangle.onBlade(-wheelRadiusMm * Math.sin(bevelRad), wheelRadiusMm * Math.cos(bevelRad))
    expect(distance(axis, [0, 0])).toBeCloseTo(0, 9)
  })

  test.each([0, 40])('stands where the scene has the same machine, bar %d mm beside the axle', (barOffsetMm) => {
    const setUp = setUpOf(job())
    if (!setUp.ok) throw new Error('no set-up')
    const triangle = triangleOf(setUp.value, barOffsetMm)
    const figures = { ...machineFigures(job(), setUp.value), barOffsetMm }
    const base = new Float64Array(16)
    placeBase(figures, { tiltRad: setUpTiltRad(setUp.value), yawRad: 0, traverseMm: 0 }, base)
    const [, edgeY, edgeZ] = under(base, 0, 0, 0)
    const [barY, barZ] = barAxisMm(figures)
    expect(distance(triangle.edge, [edgeZ, edgeY])).toBeCloseTo(0, 9)
    expect(distance(triangle.bar, [barZ, barY])).toBeCloseTo(0, 9)
  })

  test('which figure is found follows from the two that are given', () => {
    expect(foundKeyOf(job())).toBe('barDistanceMm')
  })
})

describe('scales', () => {
  test('the largest factor that fits is taken', () => {
    // 0.5 mm at 100 times is 50 mm = 189 px; at 200 times 378 px.
    expect(factorFor(DEPTH, 0.5, 190)).toBe(100)
    expect(factorFor(DEPTH, 0.5, 188)).toBe(50)
    expect(factorFor(DEPTH, 1000, 10)).toBe(1)
  })

  test('a bar has a round length in the unit that is read', () => {
    expect(barLength(34, 'mm')).toEqual({ mm: 20, label: '20\u00a0mm' })
    expect(barLength(0.3, 'mm')).toEqual({ mm: 0.2, label: '0.2\u00a0mm' })
    expect(barLength(34, 'inch')).toEqual({ mm: 25.4, label: '1\u00a0in' })
    expect(barLength(0.3, 'thou').label).toBe('10\u00a0thou')
  })
})

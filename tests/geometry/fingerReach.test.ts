import { describe, expect, it } from 'vitest'
import { advance, type GrindState } from '../../geometry/grind.ts'
import type { JobInput } from '../../geometry/job.ts'
import { type Begun, begin, exampleJob, found, ground, reliefMm } from './example.ts'

/**
 * How far the fingers must reach. While no stop bears, the pressure's centre is the load place u_f, so even wear over the
 * width w can be kept up exactly if u_f is below the even spread in convex order (Strassen 1965):
 * E[max(0, +-u_f - K)] <= (w/2 - K)^2 / (2 w) for every K. Worked out for each path that gives the limits below.
 */
const W = 57
const T = 3.2

type Motion = NonNullable<JobInput['motion']>

/** Stiff bed and stops out of the way; wheel and traverse cover the iron. */
const grind = (motion: Motion, reach: number): Begun =>
  begin(
    exampleJob({
      motion: { ...motion, fingerReachMm: reach, bedStiffnessNPerMm3: 200, yawLeftDeg: 10, yawRightDeg: 10 },
    }),
  )

const onBy = ({ state, motion }: Begun, sweeps: number): number => {
  found(advance(state, motion, sweeps * motion.stepsPerSweep))
  return reliefMm(state)
}

/** Shares of time as the steps have them, which for three positions differ from those asked for by up to a step. */
const pathOf = (motion: Motion): Float64Array => grind(motion, 1).motion.path
const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length

const threePosition: Motion = { path: 'threePosition', endShare: 0.25 }
const shareAtAnEnd = mean(pathOf(threePosition).map((f) => (f === 1 ? 1 : 0)))

/** E[max(0, u_f - K)] for u_f = B f against (w/2 - K)^2 / (2 w), the largest B that keeps it for every K. */
const limits: readonly { name: string; motion: Motion; limitMm: number }[] = [
  // Arcsine law: K = 0 binds, 2 B / pi / 2 = w / 8.
  { name: 'sinusoid', motion: { path: 'sinusoid' }, limitMm: (Math.PI * W) / 8 },
  // Even over -B .. B: every K binds at once, at B = w / 2.
  { name: 'triangle', motion: { path: 'triangle' }, limitMm: W / 2 },
  // p (B - K) touches (w/2 - K)^2 / (2 w) at K = w/2 - p w.
  { name: 'three-position', motion: threePosition, limitMm: (W * (1 - shareAtAnEnd)) / 2 },
]

describe.each(limits)('$name, limit $limitMm mm', ({ motion, limitMm }) => {
  it('inside it a straight edge stays straight, however free the fixture', () => {
    const begun = grind(motion, 0.95 * limitMm)
    const early = onBy(begun, 200)
    // Up to a soft drop at the very corners as deep as the bed is pressed; it has come to rest.
    expect(early).toBeLessThan(0.015)
    expect(Math.abs(onBy(begun, 300) - early)).toBeLessThan(5e-4)
  })

  it('beyond it the corners go on falling back', () => {
    const begun = grind(motion, 1.05 * limitMm)
    const early = onBy(begun, 100)
    expect(onBy(begun, 200) - early).toBeGreaterThan(0.05)
  })
})

/** First moment of the steel gone about the centre line, left and right alike (mm^4). */
const spreadMm4 = ({ vMm, vStartMm, uMm, columnEdgesMm, rowHeightsMm, throughCount }: GrindState): number =>
  vMm.reduce((sum, v, at) => {
    const i = Math.floor(at / throughCount)
    const areaMm2 =
      ((columnEdgesMm[i + 1] as number) - (columnEdgesMm[i] as number)) * (rowHeightsMm[at % throughCount] as number)
    return sum + Math.abs(uMm[i] as number) * (v - (vStartMm[at] as number)) * areaMm2
  }, 0)

/** Half of the time at the ends, half on the way between: E max(0, u_f - K) has K = 0 bind, at B = w / 3. */
const dwell = [0, 1, 1, 1, 0, -1, -1, -1]

describe.each([
  { name: 'sinusoid', motion: { path: 'sinusoid' }, reachMm: 1.1 * (Math.PI / 8) * W },
  { name: 'two ends', motion: { path: 'threePosition', endShare: 0.49 }, reachMm: 1.1 * 0.255 * W },
  { name: 'dwelling at the ends', motion: { path: 'recorded', recordedPath: dwell }, reachMm: 1.1 * (W / 3) },
] satisfies { name: string; motion: Motion; reachMm: number }[])('$name, a tenth beyond', ({ motion, reachMm }) => {
  it('steel goes outwards at the rate E|u_f| - w/4, relief at 24 (E|u_f| - w/4) / (w^2 t) a mm^3', () => {
    const begun = grind(motion, reachMm)
    const excessMm = reachMm * mean(begun.motion.path.map(Math.abs)) - W / 4
    const before = onBy(begun, 100)
    const spreadBefore = spreadMm4(begun.state)
    const grown = onBy(begun, 200) - before
    const removedMm3 = 200 * 0.5
    // Exact where each press lies on one side of the middle; presses near the middle do not, a few hundredths of the time.
    const rate = (spreadMm4(begun.state) - spreadBefore) / removedMm3 - W / 4
    expect(Math.abs(rate / excessMm - 1)).toBeLessThan(0.05)
    // That moment is a relief if the steel goes as two straight slopes; the ridge is soft, so the corners get a little less.
    const reliefRate = grown / removedMm3 / ((24 * excessMm) / (W * W * T))
    expect(reliefRate).toBeGreaterThan(0.85)
    expect(reliefRate).toBeLessThan(1)
  })
})

it.each([
  [21.8, 0.011],
  [22.4, 0.08],
  [23, 0.298],
  [24, 0.58],
])('an independent solver: reach %f, two turns, stiff bed, 600 sweeps: relief %f', (fingerReachMm, relief) => {
  const job = exampleJob({ motion: { fingerReachMm, bedStiffnessNPerMm3: 200, sweeps: 600 } })
  // On another grid and to three digits; close to the limit a micrometre more reach is a micrometre more relief.
  expect(Math.abs(reliefMm(ground(job)) - relief)).toBeLessThan(2e-3)
})

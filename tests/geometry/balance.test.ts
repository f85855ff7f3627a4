import { describe, expect, it } from 'vitest'
import { type Bearing, balance, type Weighing } from '../../geometry/balance.ts'
import { forget, newClearance } from '../../geometry/clearance.ts'
import { advance, type GrindState } from '../../geometry/grind.ts'
import { MOMENT_TOLERANCE } from '../../geometry/tolerances.ts'
import { seeded } from '../support/seeded.ts'
import { begin, exampleJob, found } from './example.ts'

/** A guess from which no direct way starts: the blade hangs free, so that the nested way must do. */
const lifted = { depthSlope: -0.5, turnSlope: 0 }

/**
 * A rough bevel, every node set back at random, held far from its pivot by a short projection: where edge and heel have
 * levers so different, the moment need not grow with the turn, and a blade may have several balances.
 */
const STOP = 0.1
const LOAD_N = 20
const HALF_MM = 57 / 2
const roughBlade = (seed: number, turnSlope: number, loadPlaceMm: number): GrindState => {
  const { state } = begin(
    exampleJob({
      grid: { across: 25, through: 5 },
      blade: { thicknessMm: 6 },
      station: { wheelWidthMm: 80 },
      aim: { projectionMm: 40 },
      fixture: { pivotOffsetMm: -60 },
    }),
  )
  const { vMm, uMm, weighing } = state
  const random = seeded(seed)
  for (let at = 0; at < vMm.length; at++) vMm[at] = (vMm[at] as number) + 0.5 + 1.5 * random()
  Object.assign(weighing.scales.clearance, newClearance(vMm, uMm.length))
  const push = { loadN: LOAD_N, loadPlaceMm, stiffnessNPerMm3: 20, slopeLeft: STOP, slopeRight: STOP, handSlope: null }
  Object.assign(weighing.push, push)
  Object.assign(weighing.pose, { depthSlope: 0, turnSlope })
  return state
}

interface Look {
  readonly turnSlope: number
  readonly moment: number
}

const LOOKS = 256

/** Moments about the centre line at even turns from stop to stop, the tilt balanced: both stops are brought to the turn. */
const momentsOf = (seed: number): readonly Look[] => {
  const { weighing } = roughBlade(seed, 0, 0)
  return Array.from({ length: LOOKS + 1 }, (_, k) => {
    const turnSlope = STOP * ((2 * k) / LOOKS - 1)
    Object.assign(weighing.push, { slopeLeft: -turnSlope, slopeRight: turnSlope })
    Object.assign(weighing.pose, { depthSlope: 0, turnSlope })
    expect(balance(weighing, lifted)).not.toBeNull()
    return { turnSlope, moment: weighing.scales.sums.moment }
  })
}

/** The load place in the middle of the moment's deepest fall, where there are most balances. */
const placeOfFall = (looks: readonly Look[]): number => {
  let highest = Number.NEGATIVE_INFINITY
  let fall = 0
  let middle = 0
  for (const { moment } of looks) {
    highest = Math.max(highest, moment)
    if (highest - moment > fall) [fall, middle] = [highest - moment, (highest + moment) / 2]
  }
  return middle / LOAD_N
}

const SEED = 1
const BEVELS = 12
const STARTS = [-0.95, -0.5, -0.1, 0.3, 0.7, 0.95]

/** Turns in the looks between which the search may step over two balances at once: a 32nd of the way between the stops. */
const OVERLOOKED = LOOKS / 32

describe('rough bevels with several balances', () => {
  const bevels = Array.from({ length: BEVELS }, (_, k) => {
    const seed = SEED + k
    const looks = momentsOf(seed)
    const placeMm = placeOfFall(looks)
    return {
      seed,
      placeMm,
      looks: looks.map(({ turnSlope, moment }) => ({ turnSlope, moment: moment - LOAD_N * placeMm })),
    }
  })

  it(`are what they are called, seeds ${SEED} to ${SEED + BEVELS - 1}`, () => {
    for (const { looks } of bevels) {
      const changes = looks.slice(1).filter(({ moment }, k) => moment > 0 !== (looks[k] as Look).moment > 0)
      expect(changes.length).toBeGreaterThan(1)
    }
  })

  it('nested: takes the balance nearest to the last turn on the way that the moment pulls', () => {
    for (const { seed, placeMm, looks } of bevels)
      for (const share of STARTS) {
        const start = share * STOP
        const { weighing } = roughBlade(seed, start, placeMm)
        const told = expectBalanced(weighing, balance(weighing, lifted), `seed ${seed} from ${share}`)
        const { turnSlope } = weighing.pose
        const way = Math.sign(turnSlope - start)
        const against = looks.filter(
          (look) =>
            (look.turnSlope - start) * way > 0 && (turnSlope - look.turnSlope) * way > 0 && look.moment * way > 0,
        )
        expect(against.length, told).toBeLessThanOrEqual(OVERLOOKED)
      }
  })

  it('started at the last pose: takes a balance', () => {
    for (const { seed, placeMm } of bevels)
      for (const share of STARTS) {
        const turnSlope = share * STOP
        const { weighing } = roughBlade(seed, turnSlope, placeMm)
        expectBalanced(weighing, balance(weighing, { depthSlope: 0, turnSlope }), `seed ${seed} from ${share}`)
      }
  })
})

/** Force carried, and moment too but for what a stop carries that it is pulled into. @returns what to say where more is asked */
const expectBalanced = ({ scales, pose }: Weighing, bearing: Bearing | null, from: string): string => {
  const { force, moment } = scales.sums
  const told = `${from}: ${bearing} at ${pose.turnSlope / STOP} of the stop`
  expect(Math.abs(force / LOAD_N - 1), told).toBeLessThan(2e-5)
  if (bearing === 'right') expect([pose.turnSlope, moment < 0], told).toEqual([STOP, true])
  else if (bearing === 'left') expect([pose.turnSlope, moment > 0], told).toEqual([-STOP, true])
  else expect([bearing, Math.abs(moment) < MOMENT_TOLERANCE * LOAD_N * HALF_MM], told).toEqual(['none', true])
  return told
}

it('the nested way agrees with the direct one at every step of a grind', () => {
  const { state, motion } = begin(exampleJob({ grid: { across: 21, through: 5 }, motion: { stopTurnsLeft: 0.5 } }))
  const { weighing } = state
  for (let step = 0; step < 96; step++) {
    const { depthSlope, turnSlope } = weighing.pose
    const field = state.vMm.slice()
    found(advance(state, motion, 1))
    const direct = { ...weighing.pose }
    const worn = state.vMm.slice()
    state.vMm.set(field)
    forget(weighing.scales.clearance)
    Object.assign(weighing.pose, { depthSlope, turnSlope })
    expect(balance(weighing, lifted)).toBe(state.bearing)
    // Each leaves off within the tolerance of the moment, from either side.
    const { momentPerTurn, momentPerDepth, forcePerTurn, forcePerDepth } = weighing.scales.sums
    const perTurn = momentPerTurn - (momentPerDepth * forcePerTurn) / forcePerDepth
    const apart = Math.abs(weighing.pose.turnSlope - direct.turnSlope)
    expect(apart).toBeLessThan((3 * MOMENT_TOLERANCE * LOAD_N * HALF_MM) / perTurn)
    // A tenth of a micrometre at a corner.
    expect(apart * HALF_MM).toBeLessThan(1e-4)
    Object.assign(weighing.pose, direct)
    state.vMm.set(worn)
  }
})

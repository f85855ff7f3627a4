import { planOf, seatSine } from '../aim.ts'
import { edgeOf } from '../edge.ts'
import { type FirstInk, firstInkOf } from '../firstInk.ts'
import { type Freedom, freedomOf } from '../freedom.ts'
import { advance, type GrindState, startGrind } from '../grind.ts'
import { inkLeftByThird } from '../ink.ts'
import type { Job } from '../job.ts'
import { planMotion, sweepsOf } from '../motion.ts'
import { mirroredProfile, type Profile, profileOf } from '../profile.ts'
import type { EdgeReport, PlanReport } from '../report.ts'
import { ok, type Result } from '../result.ts'
import { type SetUp, setUpOf } from '../setUp.ts'
import type { LessonState } from './state.ts'

/** Stages of a lesson's state, each worked out when a figure first asks for it. Null: the stage has no answer. */
export interface Scene {
  readonly state: LessonState
  readonly setUp: () => SetUp | null
  readonly freedom: () => Freedom | null
  readonly plan: () => PlanReport | null
  readonly ground: () => GrindState | null
  readonly edge: () => EdgeReport | null
  /** Ink left on the bevel's thirds after the first sweeps. */
  readonly inkLeft: () => readonly [left: number, middle: number, right: number] | null
  readonly firstInk: () => FirstInk | null
  /** The edge wanted as it lies in its plane: a bevel-up iron is turned over. */
  readonly inPlane: () => Profile | null
  readonly sine: () => number | null
}

/** Finds a figure of a state; null: the state has none such. */
export type Find = (scene: Scene) => number | null

const once = <T>(find: () => T): (() => T) => {
  let found: { readonly value: T } | null = null
  return () => {
    found ??= { value: find() }
    return found.value
  }
}

const orNull = <T>(result: Result<T>): T | null => (result.ok ? result.value : null)

/** Points on a wanted edge, left to right; odd, so that the middle is one. */
const POINTS = 221

/** The wanted edge at the wheel, back up; null where nothing sound is wanted. */
export const wantedEdge = (job: Job): Profile | null => {
  const plan = orNull(planOf(job))
  return plan && wantedProfile(job.blade.widthMm, plan.edgeRadiusMm)
}

const wantedProfile = (widthMm: number, radiusMm: number | null): Profile => {
  const uMm = Array.from({ length: POINTS }, (_, i) => (widthMm * (2 * i - (POINTS - 1))) / (2 * (POINTS - 1)))
  const behind = (u: number) => (radiusMm === null ? 0 : radiusMm - Math.sqrt(radiusMm * radiusMm - u * u))
  return profileOf(uMm, uMm.map(behind))
}

/** Sweeps after which anybody would stop and look at the ink: on and back once. */
const FIRST_SWEEPS = 2

const groundFor = ({ job }: LessonState, freedom: Freedom | null, sweeps: number): Result<GrindState> | null => {
  if (freedom === null) return null
  const started = startGrind(job)
  return started.ok ? advance(started.value, planMotion(job, freedom), sweeps * job.motion.stepsPerSweep) : started
}

/** @returns the stages of a state */
export const sceneOf = (state: LessonState): Scene => {
  const { job } = state
  const setUp = once(() => orNull(setUpOf(job)))
  const freedom = once(() => {
    const found = setUp()
    return found && orNull(freedomOf(job, found))
  })
  const plan = once(() => orNull(planOf(job)))
  const after = (sweeps: number) => orNull(groundFor(state, freedom(), sweeps) ?? ok(null))
  const ground = once(() => after(sweepsOf(job)))
  return {
    state,
    setUp,
    freedom,
    plan,
    ground,
    edge: once(() => {
      const field = ground()
      return field && edgeOf(field.uMm, field.vMm, field.throughCount)
    }),
    inkLeft: once(() => {
      const field = after(Math.min(FIRST_SWEEPS, sweepsOf(job)))
      return field && inkLeftByThird(field)
    }),
    firstInk: once(() => orNull(firstInkOf(job))),
    inPlane: once(() => {
      const edge = wantedEdge(job)
      return edge && job.blade.bevelSide === 'up' ? mirroredProfile(edge) : edge
    }),
    sine: () => seatSine(job),
  }
}

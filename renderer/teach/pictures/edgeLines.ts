import { type GroundEdge, refsOfAsk, refsOfStep } from '../../../geometry/lesson/findings.ts'
import type { LessonStep } from '../../../geometry/lesson/lesson.ts'
import { refOf, refsIn } from '../../../geometry/lesson/refs.ts'
import { wantedEdge } from '../../../geometry/lesson/scene.ts'
import type { LessonState } from '../../../geometry/lesson/state.ts'
import { type Profile, profileReliefMm } from '../../../geometry/profile.ts'
import { restUnder } from '../../../geometry/straightedge.ts'
import { hone } from '../../../geometry/strokes.ts'

/** A line across the iron: places and depths behind the edge's foremost point (mm); before it is less than nought. */
export interface AcrossLine {
  readonly uMm: readonly number[]
  readonly behindMm: readonly number[]
}

/** What lies beside the edge in its picture. */
export interface BesideLine extends AcrossLine {
  readonly kind: 'straightedge' | 'pressed' | 'before' | 'cap' | 'arc'
}

/** The edge, and what a step holds against it. */
export interface EdgeLines {
  readonly edge: AcrossLine
  readonly reliefMm: number
  readonly others: readonly BesideLine[]
}

const names = (refs: readonly string[], part: string): boolean =>
  refs.some((ref) => refOf(ref)?.figure?.startsWith(part) ?? false)

/** Straight across, from corner to corner and a little over them. */
const OVER_SHARE = 1.04

const straight = (
  kind: BesideLine['kind'],
  { uMm }: Profile,
  behindMm: (u: number) => number,
  over = 1,
): BesideLine => {
  const half = over * (uMm.at(-1) as number)
  return { kind, uMm: [-half, half], behindMm: [behindMm(-half), behindMm(half)] }
}

const pressedLine = (profile: Profile): BesideLine => {
  const { slope, atZeroMm } = restUnder({ atMm: profile.uMm, backMm: profile.behindMm }, -1)
  return straight('pressed', profile, (u) => atZeroMm + slope * u, OVER_SHARE)
}

const fromForemost = ({
  uMm,
  behindMm,
  arcMm,
}: GroundEdge): { readonly edge: AcrossLine; readonly arc: BesideLine } => {
  const foremost = Math.min(...behindMm)
  return {
    edge: { uMm, behindMm: behindMm.map((v) => v - foremost) },
    arc: { kind: 'arc', uMm, behindMm: arcMm.map((v) => v - foremost) },
  }
}

/**
 * What is drawn for a step; nothing of it says what is asked before it is told.
 * @param groundMm the edge that the wheel leaves, where the step speaks of that
 * @returns null where no sound edge is wanted
 */
export const linesOf = (
  step: LessonStep,
  { job, bench }: LessonState,
  groundMm: GroundEdge | null,
  told: boolean,
): EdgeLines | null => {
  if (groundMm) {
    const { edge, arc } = fromForemost(groundMm)
    return { edge, reliefMm: Math.max(...edge.behindMm), others: [arc] }
  }
  const profile = wantedEdge(job)
  if (!profile) return null
  const said = told ? refsOfStep(step) : step.text.flatMap(refsIn)
  const asked = refsOfAsk(step)
  const wanted = { edge: profile, reliefMm: profileReliefMm(profile) }
  if (names(asked, 'honed') && told) {
    const strokes = { corner: bench.strokesCorner, halfway: bench.strokesHalfway, middle: bench.strokesMiddle }
    const honed = hone(profile, strokes, bench.setBackMm).profile
    return { edge: honed, reliefMm: profileReliefMm(honed), others: [{ ...profile, kind: 'before' }] }
  }
  if (names(asked, 'cap') && told) return { ...wanted, others: [straight('cap', profile, () => bench.capSetbackMm)] }
  if (names(said, 'gapPressed')) return { ...wanted, others: [pressedLine(profile)] }
  return { ...wanted, others: [straight('straightedge', profile, () => 0, OVER_SHARE)] }
}

import { calibratedRatio, ratioError } from '../../geometry/calibrated.ts'
import { median } from '../../geometry/fit.ts'
import { freePlayOf } from '../../geometry/freedom.ts'
import type { Job } from '../../geometry/job.ts'
import type { Learnt, LearntGrind } from '../../main/contract/learnt.ts'

/** How the fixture grinds beside what the model says. */
export type Side = 'as' | 'more' | 'less'

/** What is said of a fixture at one free play; shares are of the model's relief. */
export interface Verdict {
  readonly side: Side
  /** Off the model, without sign: `side` says which way. */
  readonly byShare: number
  readonly errorShare: number
  /** Null: the newest grind changed too little to be told of. */
  readonly moved: { readonly key: Move; readonly fromShare: number } | null
}

/** From which side to which: each its own sentence. */
const moves = {
  less: { less: 'lessToLess', as: 'lessToAs', more: 'lessToMore' },
  as: { less: 'asToLess', as: null, more: 'asToMore' },
  more: { less: 'moreToLess', as: 'moreToAs', more: 'moreToMore' },
} as const
type Move = NonNullable<(typeof moves)[Side][Side]>

/** Less than this off the model is as the model says. */
const AS_MODEL = 0.01
/** The newest grind moved the ratio enough to be told of. */
const MOVED = 0.03

const sideOf = (off: number): Side => (Math.abs(off) < AS_MODEL ? 'as' : off > 0 ? 'more' : 'less')

/**
 * The free play to speak of, since lash counts for more the less free play there is.
 * @returns the job's, or where its stops are closed or not known the middle one of the grinds used; null: there is none
 */
export const playInUse = (job: Job, grinds: readonly LearntGrind[]): number | null => {
  const play = freePlayOf(job)
  const meanMm = play === null ? 0 : (play.leftMm + play.rightMm) / 2
  if (meanMm > 0) return meanMm
  const used = grinds.filter(({ standing }) => standing === 'used')
  return used.length === 0 ? null : median(used.map(({ freePlayMm }) => freePlayMm))
}

/** What scale and lash come to together at a free play > 0, and what the newest grind did to it. */
export const verdictAt = ({ calibration, before }: Learnt, freePlayMm: number): Verdict => {
  const off = calibratedRatio(calibration, freePlayMm) - 1
  const was = before === null ? off : calibratedRatio(before, freePlayMm) - 1
  const key = Math.abs(off - was) > MOVED ? moves[sideOf(was)][sideOf(off)] : null
  return {
    side: sideOf(off),
    byShare: Math.abs(off),
    errorShare: ratioError(calibration, freePlayMm),
    moved: key === null ? null : { key, fromShare: Math.abs(was) },
  }
}

import type { Job } from '../../geometry/job.ts'
import type { QuantityPath } from '../../geometry/quantities.ts'
import type { Side } from '../../geometry/report.ts'
import { useApp } from '../app/store.ts'
import { forgetRefused } from '../app/storeJob.ts'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { withTurns } from './stops.ts'

/** Keys of the motion that this screen's fields and handles change. */
export type MotionKey = 'loadN' | 'fingerReachMm' | 'traverseMm' | 'sweeps'

/** The field of a stop's turns. */
export const turnsPath = (side: Side) =>
  side === 'left' ? ('motion.stopTurnsLeft' as const) : ('motion.stopTurnsRight' as const)

/** Commits a change of the motion. @returns false where the job did not take it; the field then says why */
export const changeMotion = (key: MotionKey, value: number): Promise<boolean> =>
  useApp
    .getState()
    .editJob((job: Job) => ({ ...job, motion: { ...job.motion, [key]: value } }), { at: `motion.${key}` })

/** Commits the turns of a stop. @returns as `changeMotion` */
export const changeTurns = (side: Side, turns: number): Promise<boolean> =>
  useApp.getState().editJob((job: Job) => withTurns(job, side, turns), { at: turnsPath(side) })

/** What a field of this screen shows of a refused edit, and how it is forgotten. */
export const useRefusal = (path: QuantityPath) => {
  const t = useTexts()
  const refused = useApp((app) => (app.problemAt === path ? app.problems[0] : undefined))
  return { problem: refused ? problemSentence(t, refused) : null, onRestore: forgetRefused }
}

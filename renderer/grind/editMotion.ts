import type { Job } from '../../geometry/job.ts'
import type { QuantityPath } from '../../geometry/quantities.ts'
import type { Side } from '../../geometry/report.ts'
import { useApp } from '../app/store.ts'
import { forgetRefused } from '../app/storeJob.ts'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { turnsPath, withTurns } from './stops.ts'

/** Keys of the motion that this screen's fields and handles change. */
export type MotionKey = 'loadN' | 'fingerReachMm' | 'traverseMm' | 'sweeps'

/** Commits a change of the job. @returns false where the job did not take it; the field of this path then says why */
export const editJobAt = (path: QuantityPath, change: (job: Job) => Job): Promise<boolean> =>
  useApp.getState().editJob(change, { at: path })

/** Commits a change of the motion. @returns as `editJobAt` */
export const changeMotion = (key: MotionKey, value: number): Promise<boolean> =>
  editJobAt(`motion.${key}`, (job) => ({ ...job, motion: { ...job.motion, [key]: value } }))

/** Commits how the hand goes from side to side. @returns as `changeMotion` */
export const changePath = (path: Job['motion']['path']): Promise<boolean> =>
  useApp.getState().editJob((job: Job) => ({ ...job, motion: { ...job.motion, path } }), { at: 'motion.path' })

/** Commits the turns of a stop. @returns as `editJobAt` */
export const changeTurns = (side: Side, turns: number): Promise<boolean> =>
  editJobAt(turnsPath(side), (job) => withTurns(job, side, turns))

/** What a field of this screen shows of a refused edit, and how it is forgotten. */
export const useRefusal = (path: QuantityPath) => {
  const t = useTexts()
  const refused = useApp((app) => (app.problemAt === path ? app.problems[0] : undefined))
  return { problem: refused ? problemSentence(t, refused) : null, onRestore: forgetRefused }
}

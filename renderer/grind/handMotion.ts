import type { Job } from '../../geometry/job.ts'
import { quantities } from '../../geometry/quantities.ts'
import type { HandMade } from '../worker/liveGrind.ts'

/** Whole sweeps that the hand has made and a job can hold; the part of a sweep left over is dropped. */
export const handSweeps = ({ motion }: Job, { path }: HandMade): number =>
  Math.min(Math.floor(path.length / motion.stepsPerSweep), quantities.motion.recordedSweeps.max)

/**
 * The job moved as the hand has moved it. Made from the start, the whole grind is the hand's; taken over later, the hand's
 * sweeps become the path that the planned number of sweeps walks again and again.
 * @returns null where the hand has made no whole sweep
 */
export const withHandMotion = (job: Job, made: HandMade): Job | null => {
  const sweeps = handSweeps(job, made)
  if (sweeps === 0) return null
  const recordedPath = [...made.path.slice(0, sweeps * job.motion.stepsPerSweep)]
  const motion = { ...job.motion, path: 'recorded' as const, recordedPath, recordedSweeps: sweeps }
  return { ...job, motion: made.fromStep === 0 ? { ...motion, sweeps, schedule: [] } : motion }
}

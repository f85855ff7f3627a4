import type { Job } from '../../geometry/job.ts'

/** Pressure at which every drawn scale ends: eight times the load spread evenly, more than a stop's corner carries. */
export const fullPressureNPerMm = (job: Job): number => (8 * job.motion.loadN) / job.blade.widthMm

import type { Job } from '../../geometry/job.ts'
import type { SetUpReport } from '../../geometry/report.ts'

/** Bevel, projection and axle to bar: any two give the third. */
export const aimKeys = ['barDistanceMm', 'projectionMm', 'bevelAngleDeg'] as const
export type AimKey = (typeof aimKeys)[number]

/** @returns which of the three this job finds from the others */
export const foundKeyOf = ({ aim }: Job): AimKey => aimKeys.find((key) => aim[key] === null) ?? 'barDistanceMm'

/** Decimals kept when a found figure becomes a given one: a tenth of what anyone sets. */
const KEPT_DECIMALS = 2

/** @returns the job with `found` found, and the other two given as they stand */
export const withFound = (job: Job, setUp: SetUpReport, found: AimKey): Job => {
  const given = (key: AimKey) => (key === found ? null : (job.aim[key] ?? Number(setUp[key].toFixed(KEPT_DECIMALS))))
  return {
    ...job,
    aim: {
      ...job.aim,
      barDistanceMm: given('barDistanceMm'),
      projectionMm: given('projectionMm'),
      bevelAngleDeg: given('bevelAngleDeg'),
    },
  }
}

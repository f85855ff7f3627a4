import { meanReliefMm } from '../../geometry/edge.ts'
import { freePlayOf } from '../../geometry/freedom.ts'
import type { Job } from '../../geometry/job.ts'
import { sweepsOf } from '../../geometry/motion.ts'
import type { Report } from '../../geometry/report.ts'
import type { GroundBy } from '../contract/entities.ts'

/** A line that belongs to no job. */
export const groundByNothing: GroundBy = {
  stationId: null,
  fixtureId: null,
  task: null,
  sweeps: null,
  freePlayLeftMm: null,
  freePlayRightMm: null,
  modelReliefMm: null,
}

interface GroundJob {
  readonly job: { readonly document: Job }
  readonly station: { readonly id: string }
  readonly fixture: { readonly id: string }
}

/** What a line keeps of its job in columns, so that what a fixture learns is found without reading every report again. */
export const groundBy = ({ job, station, fixture }: GroundJob, report: Report | null): GroundBy => {
  const play = freePlayOf(job.document)
  return {
    stationId: station.id,
    fixtureId: fixture.id,
    task: job.document.aim.task,
    sweeps: sweepsOf(job.document),
    freePlayLeftMm: play?.leftMm ?? null,
    freePlayRightMm: play?.rightMm ?? null,
    modelReliefMm: report && meanReliefMm(report.grind),
  }
}

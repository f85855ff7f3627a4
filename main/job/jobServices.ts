import { ok, type Result } from '../../geometry/result.ts'
import { type JobParts, toolAimOf } from '../contract/jobParts.ts'
import type { Made } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import { needRecord } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { addRecord, editRecord } from '../rack/recordServices.ts'
import type { Service, Services } from '../services.ts'
import { inStep, newDocument } from './document.ts'
import { findJobOfTool, jobRecordOf, jobStore, type KeptJob } from './job.ts'
import { partsOf } from './parts.ts'

/** A job in hand and what it is made of, all as they stand today. */
interface JobInHand extends JobParts {
  readonly job: KeptJob
}

const placesOf = ({ station, fixture }: JobParts) => ({ stationId: station.id, fixtureId: fixture.id })

/** @returns a job with today's records in it, nothing written */
const today = async (db: Database, job: KeptJob): Promise<Result<JobInHand>> => {
  const parts = await partsOf(db, job.toolId, job)
  if (!parts.ok) return parts
  const document = inStep(job.document, parts.value, job.toolAim)
  return ok({ ...parts.value, job: { ...job, ...placesOf(parts.value), document } })
}

/** @returns the job of an id as it would be ground today. @param path where the id was given, for the problem */
export const jobInHand = async (db: Database, id: string, path = 'id'): Promise<Result<JobInHand>> => {
  const job = await needRecord(db, jobStore, id, path)
  return job.ok ? today(db, job.value) : job
}

/** @returns what a tool would be ground by today, by its job in hand or a first one that nobody has kept yet; nothing is written */
export const jobToday = async (
  db: Database,
  toolId: string,
): Promise<Result<JobParts & { readonly job: Pick<KeptJob, 'code' | 'document'> }>> => {
  const there = await findJobOfTool(db, toolId)
  if (there !== null) return today(db, there)
  const parts = await partsOf(db, toolId, {})
  return parts.ok ? ok({ ...parts.value, job: { code: '', document: newDocument(parts.value) } }) : parts
}

/** The program's own doing, so it is not among the things a user can take back. */
const makeJob = async (db: Database, desk: Desk, toolId: string): Promise<Result<Made<KeptJob>>> => {
  const parts = await partsOf(db, toolId, {})
  if (!parts.ok) return parts
  const fields = {
    toolId,
    ...placesOf(parts.value),
    document: newDocument(parts.value),
    toolAim: toolAimOf(parts.value.tool),
    usedAt: desk.now().toISOString(),
  }
  return addRecord(db, desk, jobStore, fields, true)
}

const openJob =
  (desk: Desk): Service<'job.open'> =>
  async ({ toolId }, context) => {
    const there = await desk.access.read((db) => findJobOfTool(db, toolId))
    if (there !== null) {
      const opened = await desk.access.read((db) => today(db, there))
      return opened.ok ? ok(jobRecordOf(opened.value.job)) : opened
    }
    const made = await desk.access.write((db) => makeJob(db, desk, toolId))
    if (!made.ok) return made
    context.changed('job', [made.value.value.id])
    return ok(jobRecordOf(made.value.value))
  }

const saveJob = async (
  db: Database,
  desk: Desk,
  { id, version, document, stationId, fixtureId }: Parameters<Service<'job.edit'>>[0],
): Promise<Result<Made<KeptJob>>> => {
  const kept = await needRecord(db, jobStore, id)
  if (!kept.ok) return kept
  const wanted = { stationId: stationId ?? kept.value.stationId, fixtureId: fixtureId ?? kept.value.fixtureId }
  const parts = await partsOf(db, kept.value.toolId, wanted)
  if (!parts.ok) return parts
  const toolAim = toolAimOf(parts.value.tool)
  return editRecord(
    db,
    desk,
    jobStore,
    { id, version },
    {
      ...placesOf(parts.value),
      document: inStep(document, parts.value, toolAim),
      toolAim,
      usedAt: desk.now().toISOString(),
    },
  )
}

const editJob =
  (desk: Desk): Service<'job.edit'> =>
  async (input, context) => {
    const made = await desk.access.write((db) => saveJob(db, desk, input))
    if (!made.ok) return made
    context.changed('job', [input.id])
    return ok({ value: jobRecordOf(made.value.value), changeId: made.value.changeId })
  }

/** The calls of the job in hand. */
export const jobServices = (desk: Desk): Pick<Services, 'job.open' | 'job.edit'> => ({
  'job.open': openJob(desk),
  'job.edit': editJob(desk),
})

import type { Job } from '../../geometry/job.ts'
import type { Report } from '../../geometry/report.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { BenchLogDraft, GroundBy } from '../contract/entities.ts'
import { asOne, type Made, onlyValue } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import { needRecord } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { jobInHand } from '../job/jobServices.ts'
import { addRecord, editRecord, removeRecord } from '../rack/recordServices.ts'
import { toolStore } from '../rack/tool.ts'
import type { Services } from '../services.ts'
import { tickGround } from '../work/enqueue.ts'
import { benchLogOf, benchLogStore, type KeptBenchLog, linesOfTool } from './benchLog.ts'
import { groundBy, groundByNothing } from './groundBy.ts'

export type SolveJob = (job: Job) => Result<Report> | Promise<Result<Report>>

type Kept = Pick<KeptBenchLog, 'job' | 'report' | 'engineVersion'> & GroundBy

/** What a line keeps of its job, found before the write so that nothing waits for it. A job that cannot be solved today was still ground, so its reading is kept without a report. */
const keptOf = async (desk: Desk, { jobId, toolId }: BenchLogDraft, solve: SolveJob): Promise<Result<Kept>> => {
  if (jobId === null) return ok({ job: null, report: null, engineVersion: null, ...groundByNothing })
  const found = await desk.access.read((db) => jobInHand(db, jobId, 'jobId'))
  if (!found.ok) return found
  if (found.value.tool.id !== toolId) return failed(problem('jobOfOtherTool', 'jobId'))
  const { document } = found.value.job
  const solved = await solve(document)
  const report = solved.ok ? solved.value : null
  const engineVersion = report?.engineVersion ?? null
  return ok({ job: document, report, engineVersion, ...groundBy(found.value, report) })
}

/** Writes a line, and ticks the iron off the day's queue where it was ground; one change. */
const addLine = (db: Database, desk: Desk, draft: BenchLogDraft, kept: Kept): Promise<Result<Made<KeptBenchLog>>> =>
  asOne(db, async () => {
    const tool = await needRecord(db, toolStore, draft.toolId, 'toolId')
    if (!tool.ok) return tool
    const added = await addRecord(db, desk, benchLogStore, { ...draft, ...kept, at: desk.now().toISOString() })
    if (!added.ok) return added
    const ticked = await tickGround(db, desk, draft)
    return ticked.ok ? onlyValue(added) : ticked
  })

/** The calls of the bench log. @param solve finds the report that is kept with a line */
export const benchLogServices = (
  desk: Desk,
  solve: SolveJob,
): Pick<Services, 'benchLog.list' | 'benchLog.add' | 'benchLog.edit' | 'benchLog.remove'> => ({
  'benchLog.list': async ({ toolId }) => ok(await desk.access.read((db) => linesOfTool(db, toolId))),
  'benchLog.add': async (draft, context) => {
    const kept = await keptOf(desk, draft, solve)
    if (!kept.ok) return kept
    const made = await desk.access.write((db) => addLine(db, desk, draft, kept.value))
    if (!made.ok) return made
    context.changed('benchLog', [made.value.value.id])
    if (draft.stage === 'asGround') context.changed('queueEntry', [])
    return ok({ value: benchLogOf(made.value.value), changeId: made.value.changeId })
  },
  'benchLog.edit': async ({ id, version, counts }, context) => {
    const made = await desk.access.write((db) => editRecord(db, desk, benchLogStore, { id, version }, { counts }))
    if (!made.ok) return made
    context.changed('benchLog', [id])
    return ok({ value: benchLogOf(made.value.value), changeId: made.value.changeId })
  },
  'benchLog.remove': async (seen, context) => {
    const made = await desk.access.write((db) => removeRecord(db, desk, benchLogStore, seen))
    if (made.ok) context.changed('benchLog', [seen.id])
    return made
  },
})

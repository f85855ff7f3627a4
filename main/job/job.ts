import { jobSchema } from '../../geometry/job.ts'
import type { JobRecord } from '../contract/entities.ts'
import type { ToolAim } from '../contract/jobParts.ts'
import type { CodedStore, Row } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'

/** A job as kept: with the tool's figures when it was last written, and when that was. */
export interface KeptJob extends JobRecord {
  readonly toolAim: ToolAim
  readonly usedAt: string
}

const jobOfRow = (row: Row): KeptJob => ({
  id: row.id,
  code: String(row.code),
  version: row.version,
  toolId: String(row.toolId),
  stationId: String(row.stationId),
  fixtureId: String(row.fixtureId),
  document: jobSchema.parse(JSON.parse(String(row.document))),
  toolAim: JSON.parse(String(row.toolAim)) as ToolAim,
  usedAt: String(row.usedAt),
})

/** Jobs in hand, at most one a tool. */
export const jobStore: CodedStore<KeptJob> = {
  noun: 'job',
  labelOf: ({ code }) => code,
  toRow: (job) => ({ ...job, document: JSON.stringify(job.document), toolAim: JSON.stringify(job.toolAim) }),
  fromRow: jobOfRow,
}

/** @returns what a client sees of a job */
export const jobRecordOf = ({ toolAim: _, usedAt: __, ...record }: KeptJob): JobRecord => record

/** @returns the job in hand of a tool, or null */
export const findJobOfTool = async (db: Database, toolId: string): Promise<KeptJob | null> => {
  const row = await db
    .selectFrom('job')
    .selectAll()
    .where('toolId', '=', toolId)
    .where('deletedAt', 'is', null)
    .executeTakeFirst()
  return row === undefined ? null : jobOfRow(row as unknown as Row)
}

/** @returns the jobs in hand of some tools, by the tool's id */
export const jobsOfTools = async (db: Database, toolIds: readonly string[]): Promise<ReadonlyMap<string, KeptJob>> => {
  if (toolIds.length === 0) return new Map()
  const standing = db.selectFrom('job').selectAll().where('deletedAt', 'is', null)
  const rows = await standing.where('toolId', 'in', toolIds).execute()
  return new Map(rows.map((row) => [row.toolId, jobOfRow(row as unknown as Row)]))
}

/** @returns ids of stations and fixtures, those used last first */
export const lastUsed = (db: Database): Promise<readonly { stationId: string; fixtureId: string }[]> =>
  db
    .selectFrom('job')
    .select(['stationId', 'fixtureId'])
    .where('deletedAt', 'is', null)
    .orderBy('usedAt', 'desc')
    .execute()

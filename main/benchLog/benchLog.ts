import type { Job } from '../../geometry/job.ts'
import type { Report } from '../../geometry/report.ts'
import type { BenchLog } from '../contract/entities.ts'
import { type CodedStore, type Row, withoutMark } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'

/** A line of the log as kept: with the job it was ground by and its report, so that it replays. */
export interface KeptBenchLog extends BenchLog {
  readonly job: Job | null
  readonly report: Report | null
}

const jsonOf = (value: unknown): string | null => (value === null ? null : JSON.stringify(value))
const parsedOf = (json: unknown): unknown => (json === null ? null : JSON.parse(String(json)))

const benchLogOfRow = (row: Row): KeptBenchLog => {
  const columns = withoutMark(row)
  return {
    ...columns,
    points: parsedOf(columns.points),
    job: parsedOf(columns.job),
    report: parsedOf(columns.report),
  } as unknown as KeptBenchLog
}

/** Readings at the bench. */
export const benchLogStore: CodedStore<KeptBenchLog> = {
  noun: 'benchLog',
  labelOf: ({ code }) => code,
  toRow: (line) => ({
    ...line,
    points: jsonOf(line.points),
    job: jsonOf(line.job),
    report: jsonOf(line.report),
  }),
  fromRow: benchLogOfRow,
}

/** @returns what a client sees of a line */
export const benchLogOf = ({ job: _, report: __, ...line }: KeptBenchLog): BenchLog => line

/** @returns a tool's lines, newest first */
export const linesOfTool = async (db: Database, toolId: string): Promise<BenchLog[]> => {
  const rows = await db
    .selectFrom('benchLog')
    .selectAll()
    .where('toolId', '=', toolId)
    .where('deletedAt', 'is', null)
    .orderBy('at', 'desc')
    .orderBy((row) => row.fn<number>('length', ['code']), 'desc')
    .orderBy('code', 'desc')
    .execute()
  return rows.map((row) => benchLogOf(benchLogOfRow(row as unknown as Row)))
}

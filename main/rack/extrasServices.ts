import { sql } from 'kysely'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { Desk } from '../database/desk.ts'
import type { Database } from '../database/schema.ts'
import { recordServices } from './recordServices.ts'
import { ownFieldStore, purposeStore } from './stores.ts'

const refusal = (count: number): Result<null> =>
  count > 0 ? failed(problem('usedByTools', 'id', { count })) : ok(null)

/** Tools that have a curve for a purpose, and those that note something in a field; their JSON knows it alone. */
const toolsWithCurve = (id: string) =>
  sql<{ count: number }>`SELECT count(*) AS count FROM tool WHERE deletedAt IS NULL
    AND EXISTS (SELECT 1 FROM json_each(tool.curves) WHERE value ->> 'purposeId' = ${id})`
const toolsNoting = (id: string) =>
  sql<{ count: number }>`SELECT count(*) AS count FROM tool WHERE deletedAt IS NULL
    AND EXISTS (SELECT 1 FROM json_each(tool.own) WHERE key = ${id})`

const unlessUsed = (counted: typeof toolsWithCurve) => ({
  mayGo: async (db: Database, id: string): Promise<Result<null>> => {
    const { rows } = await counted(id).execute(db)
    return refusal(rows[0]?.count ?? 0)
  },
})

/** The services of what a workshop adds to its tools: none is taken away while a tool has it. */
export const purposeServices = (desk: Desk) => recordServices(desk, purposeStore, unlessUsed(toolsWithCurve))
export const ownFieldServices = (desk: Desk) => recordServices(desk, ownFieldStore, unlessUsed(toolsNoting))

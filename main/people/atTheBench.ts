import { sql } from 'kysely'
import { listRecords } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { personStore } from '../rack/stores.ts'
import { alike } from './sameName.ts'

/** Lines of each log that are looked at, newest written first: a workshop's last weeks, whatever came in before them. */
const LOOKED_BACK = 200

const logs = ['benchLog', 'happening', 'dressing'] as const

interface Line {
  readonly who: string
  readonly at: string
}

const newest = async (db: Database, log: (typeof logs)[number]): Promise<readonly Line[]> => {
  const { rows } = await sql<Line>`SELECT who, at FROM
    (SELECT who, at, deletedAt FROM ${sql.table(log)} ORDER BY rowid DESC LIMIT ${LOOKED_BACK})
    WHERE who <> '' AND deletedAt IS NULL`.execute(db)
  return rows
}

/** @returns who noted something at the bench last, where that is one of the workshop's people; empty: nobody known */
export const lastAtTheBench = async (db: Database): Promise<string> => {
  const lines: Line[] = []
  for (const log of logs) lines.push(...(await newest(db, log)))
  lines.sort((a, b) => (a.at < b.at ? 1 : -1))
  const people = new Map((await listRecords(db, personStore)).map(({ name }) => [alike(name), name]))
  const line = lines.find(({ who }) => people.has(alike(who)))
  return line ? (people.get(alike(line.who)) ?? '') : ''
}

import { sql } from 'kysely'
import type { Noun } from '../contract/entities.ts'
import type { Database } from '../database/schema.ts'
import { alike, nameInWords } from './sameName.ts'

/** Nouns whose lines say who did the work. */
export const nounsWithWho = ['benchLog', 'happening', 'dressing', 'sighting'] as const
/** Tables that say who did something. */
export const tablesWithWho = [...nounsWithWho, 'authorisation'] as const
/** Words that somebody wrote freely, in which a name may stand. */
export const freeWords: readonly { readonly noun: Noun; readonly column: 'note' | 'caption' }[] = [
  ...(
    [
      'tool',
      'station',
      'fixture',
      'place',
      'purpose',
      'benchLog',
      'happening',
      'dressing',
      'loan',
      'stocktake',
    ] as const
  ).map((noun) => ({ noun, column: 'note' as const })),
  { noun: 'photo', column: 'caption' },
]

/** @returns how a name is written in a column, whichever way it was typed */
export const spellingsIn = async (db: Database, table: string, column: string, name: string): Promise<string[]> => {
  const { rows } = await sql<{
    spelling: string
  }>`SELECT DISTINCT ${sql.ref(column)} AS spelling FROM ${sql.table(table)}
    WHERE ${sql.ref(column)} <> ''`.execute(db)
  return rows.map(({ spelling }) => spelling).filter((spelling) => alike(spelling) === alike(name))
}

/** Words in which a name stands. */
export interface Written {
  readonly id: string
  readonly code: string
  readonly words: string
}

/** @returns the records, removed ones too, whose free words hold the name */
export const writtenIn = async (db: Database, noun: string, column: string, name: string): Promise<Written[]> => {
  const { rows } = await sql<Written>`SELECT id, code, ${sql.ref(column)} AS words FROM ${sql.table(noun)}
    WHERE ${sql.ref(column)} <> ''`.execute(db)
  const found = nameInWords(name)
  return rows.filter(({ words }) => words.normalize('NFC').search(found) >= 0)
}

const linesBy = async (db: Database, table: string, name: string): Promise<number> => {
  const spellings = await spellingsIn(db, table, 'who', name)
  if (spellings.length === 0) return 0
  const { rows } = await sql<{ count: number }>`SELECT count(*) AS count FROM ${sql.table(table)}
    WHERE who IN (${sql.join(spellings)})`.execute(db)
  return rows[0]?.count ?? 0
}

/** Where the name of somebody stands beside the record itself. */
export interface Traces {
  /** Lines of logs that say who did it. */
  readonly lines: number
  /** Loans to that person, returned ones too. */
  readonly loans: number
  /** Codes of the records whose notes hold the name. */
  readonly notes: readonly string[]
}

/** @returns where a person's name stands in the open file */
export const tracesOf = async (db: Database, { id, name }: { id: string; name: string }): Promise<Traces> => {
  let lines = 0
  for (const table of tablesWithWho) lines += await linesBy(db, table, name)
  const notes: string[] = []
  for (const { noun, column } of freeWords)
    notes.push(...(await writtenIn(db, noun, column, name)).map(({ code }) => code))
  const { loans } = await db
    .selectFrom('loan')
    .select((loan) => loan.fn.countAll<number>().as('loans'))
    .where('personId', '=', id)
    .executeTakeFirstOrThrow()
  return { lines, loans, notes }
}

import { sql } from 'kysely'
import type { Noun } from '../contract/entities.ts'
import type { Person } from '../contract/people.ts'
import type { Database } from '../database/schema.ts'
import { alike, nameInWords } from './sameName.ts'
import { freeWords, nounsWithWho, spellingsIn, tablesWithWho, writtenIn } from './traces.ts'

/** What stands where a name stood: the person's code, which says nothing of anybody. */
type Purged = Pick<Person, 'name' | 'code'>

const purgeWho = async (db: Database, { name, code }: Purged): Promise<void> => {
  for (const table of [...tablesWithWho, 'change']) {
    const spellings = await spellingsIn(db, table, 'who', name)
    if (spellings.length > 0)
      await sql`UPDATE ${sql.table(table)} SET who = ${code} WHERE who IN (${sql.join(spellings)})`.execute(db)
  }
}

const purgeWords = async (db: Database, { name, code }: Purged): Promise<void> => {
  for (const { noun, column } of freeWords)
    for (const { id, words } of await writtenIn(db, noun, column, name)) {
      const without = words.normalize('NFC').replace(nameInWords(name), code)
      await sql`UPDATE ${sql.table(noun)} SET ${sql.ref(column)} = ${without} WHERE id = ${id}`.execute(db)
    }
}

/** A record's JSON without the name, in the entries where it is a name. @param inNotes in its free words, too */
const withoutName = (json: string | null, noun: Noun, { name, code }: Purged, inNotes: boolean): string | null => {
  if (json === null) return null
  const record = JSON.parse(json) as Record<string, unknown>
  for (const [key, value] of Object.entries(record)) {
    if (typeof value !== 'string') continue
    const isName = key === 'who' || (noun === 'person' && key === 'name')
    if (isName && alike(value) === alike(name)) record[key] = code
    if (inNotes && (key === 'note' || key === 'caption'))
      record[key] = value.normalize('NFC').replace(nameInWords(name), code)
  }
  return JSON.stringify(record)
}

/** Only these nouns' records can hold a name. */
const tellingNouns = [...new Set<Noun>(['person', ...nounsWithWho, ...freeWords.map(({ noun }) => noun)])]

const purgeHistory = async (db: Database, purged: Purged, inNotes: boolean): Promise<void> => {
  const lines = await db
    .selectFrom('change')
    .select(['id', 'noun', 'label', 'before', 'after'])
    .where('noun', 'in', tellingNouns)
    .execute()
  for (const { id, noun, label, before, after } of lines) {
    const now = {
      label: noun === 'person' && alike(label) === alike(purged.name) ? purged.code : label,
      before: withoutName(before, noun, purged, inNotes),
      after: withoutName(after, noun, purged, inNotes),
    }
    if (now.label !== label || now.before !== before || now.after !== after)
      await db.updateTable('change').set(now).where('id', '=', id).execute()
  }
}

const purgeRecords = async (db: Database, { name }: Purged): Promise<void> => {
  const spellings = await spellingsIn(db, 'person', 'name', name)
  await sql`UPDATE person SET name = code WHERE name IN (${sql.join(spellings)})`.execute(db)
}

/**
 * Puts a person's code wherever the name stands in the open file: the record, who did what, the history with its earlier
 * states, and the free words where `inNotes` says so. In the caller's transaction; nothing of it can be taken back.
 */
export const purgeName = async (db: Database, purged: Purged, inNotes: boolean): Promise<void> => {
  await purgeWho(db, purged)
  if (inNotes) await purgeWords(db, purged)
  await purgeHistory(db, purged, inNotes)
  await purgeRecords(db, purged)
}

/**
 * Makes the file anew without what was overwritten in it, and empties the log beside it: a name that was replaced would
 * otherwise stay in pages that are no longer used, and in the index of words. Outside any transaction.
 */
export const wipeFile = async (db: Database): Promise<void> => {
  await sql`INSERT INTO toolSearch (toolSearch) VALUES ('rebuild')`.execute(db)
  await sql`VACUUM`.execute(db)
  await sql`PRAGMA wal_checkpoint(TRUNCATE)`.execute(db)
}

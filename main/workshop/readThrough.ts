import { type Selectable, sql } from 'kysely'
import { changeSchema, settingsSchema, toolLineSchema } from '../contract/entities.ts'
import { record } from '../contract/record.ts'
import { learningSchema, ownLessonSchema } from '../contract/teaching.ts'
import { changeOfRow } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import type { Row } from '../database/recordStore.ts'
import type { ChangeRow, Database } from '../database/schema.ts'
import { allForms } from '../inOut/nouns.ts'
import { learningOf } from '../lessons/learnerServices.ts'
import { ownLessonStore } from '../lessons/lessonStore.ts'
import { toolsOfIds } from '../rack/finding/findTools.ts'
import { readSettings } from '../settings/settings.ts'

/** Rows held at once. */
const AT_ONCE = 1000

/** Reads a table from end to end. @throws what `read` throws of a row */
const readTable = async (
  db: Database,
  table: string,
  read: (rows: readonly Row[]) => void | Promise<void>,
): Promise<void> => {
  for (let from = 0, full = true; full; ) {
    const { rows } = await sql<Row & { readonly rowid: number }>`
      SELECT rowid, * FROM ${sql.table(table)} WHERE rowid > ${from} ORDER BY rowid LIMIT ${AT_ONCE}`.execute(db)
    await read(rows.map(({ rowid: _, ...row }) => row as Row))
    full = rows.length === AT_ONCE
    from = rows.at(-1)?.rowid ?? from
  }
}

const readNouns = async (db: Database): Promise<void> => {
  for (const { noun, store, draft } of allForms) {
    const schema = draft.extend(record)
    await readTable(db, noun, (rows) => {
      for (const row of rows) schema.parse(store.fromRow(row))
    })
  }
}

const readHistory = (db: Database): Promise<void> =>
  readTable(db, 'change', (rows) => {
    for (const row of rows as unknown as Selectable<ChangeRow>[]) {
      changeSchema.parse(changeOfRow(row, 1))
      for (const state of [row.before, row.after]) if (state !== null) JSON.parse(state)
    }
  })

/**
 * Reads everything in the open file as the program would, by its schemas. Some seconds in the largest rack, so it is only
 * asked once something could not be read: damage on the disk and a fault of the program then look alike.
 *
 * @returns whether all of it is what this program writes
 */
export const readsThrough = ({ access, now }: Desk): Promise<boolean> =>
  access.read(async (db) => {
    try {
      await readNouns(db)
      await readHistory(db)
      await readTable(db, 'lesson', (rows) => {
        for (const row of rows) ownLessonSchema.parse(ownLessonStore.fromRow(row))
      })
      learningSchema.parse(await learningOf(db))
      await readTable(db, 'tool', async (rows) => {
        const ids = rows.map(({ id }) => id)
        for (const line of await toolsOfIds(db, ids, now().toISOString())) toolLineSchema.parse(line)
      })
      settingsSchema.parse(await readSettings(db))
      return true
    } catch {
      return false
    }
  })

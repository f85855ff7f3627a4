import type { Kysely } from 'kysely'
import { codeOfNoun } from '../contract/codes.ts'
import { type InOutNoun, inOutNouns } from '../contract/inOut.ts'
import type { Row } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { folded } from './cells.ts'

/** The records that may be spoken of: those that stand in the rack, and those that come in. */
export interface Known {
  has(noun: InOutNoun, id: string): boolean
  /** @param words a code, or a name that only one record has. @returns null: none, or more than one */
  idOf(noun: InOutNoun, words: string): string | null
  add(noun: InOutNoun, id: string, code: string | null, name: unknown): void
  /** A record that was to come in and does not. */
  drop(noun: InOutNoun, id: string): void
}

interface Register {
  readonly ids: Set<string>
  readonly byCode: Map<string, string>
  /** Null: more than one has the name. */
  readonly byName: Map<string, string | null>
}

const newRegister = (): Register => ({ ids: new Set(), byCode: new Map(), byName: new Map() })

const NAMED: readonly InOutNoun[] = ['purpose', 'ownField', 'person', 'place', 'station', 'fixture', 'tool']

const read = async (db: Database, noun: InOutNoun, add: Known['add']): Promise<void> => {
  const tables = db as unknown as Kysely<Record<InOutNoun, Row & { readonly code: string; readonly name: string }>>
  const rows = await tables
    .selectFrom(noun)
    .select(NAMED.includes(noun) ? ['id', 'code', 'name'] : ['id', 'code'])
    .where('deletedAt', 'is', null)
    .execute()
  for (const row of rows as readonly { id: string; code: string; name?: string }[])
    add(noun, row.id, row.code, row.name)
}

/** @param nouns those that are referred to; the others need not be read */
export const knownRecords = async (db: Database, nouns: ReadonlySet<InOutNoun>): Promise<Known> => {
  const registers = new Map(inOutNouns.map((noun) => [noun, newRegister()]))
  const of = (noun: InOutNoun): Register => registers.get(noun) as Register
  const known: Known = {
    has: (noun, id) => of(noun).ids.has(id),
    idOf: (noun, words) => {
      const { byCode, byName } = of(noun)
      return byCode.get(codeOfNoun(noun, words) ?? '') ?? byName.get(folded(words)) ?? null
    },
    add: (noun, id, code, name) => {
      if (!nouns.has(noun)) return
      const { ids, byCode, byName } = of(noun)
      ids.add(id)
      const written = code === null ? null : codeOfNoun(noun, code)
      if (written !== null && !byCode.has(written)) byCode.set(written, id)
      if (typeof name !== 'string') return
      const sameName = byName.get(folded(name))
      byName.set(folded(name), sameName === undefined || sameName === id ? id : null)
    },
    drop: (noun, id) => void of(noun).ids.delete(id),
  }
  for (const noun of nouns) await read(db, noun, known.add)
  return known
}

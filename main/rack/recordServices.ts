import { ok, type Result } from '../../geometry/result.ts'
import { commitStep, type Made } from '../database/change.ts'
import { nextCode } from '../database/codes.ts'
import type { Desk } from '../database/desk.ts'
import { type Coded, type CodedStore, checkRefs, listRecords, needRecord, type Refs } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import type { CallContext } from '../services.ts'

interface Seen {
  readonly id: string
  readonly version: number
}

/** Adds a record with a new id and code, in the caller's transaction. */
export const addRecord = async <T extends Coded>(
  transaction: Database,
  desk: Desk,
  store: CodedStore<T>,
  fields: Omit<T, keyof Coded>,
  unasked = false,
): Promise<Result<Made<T>>> => {
  const id = desk.newId()
  const after = { ...fields, id, code: await nextCode(transaction, store.noun), version: 1 } as T
  const refs = await checkRefs(transaction, store.refs ?? {}, after)
  if (!refs.ok) return refs
  return commitStep(transaction, desk, store, { id, seen: null, before: null, after, action: 'added', unasked })
}

/** References that an edit changes: what a record named before may have been taken away since, and that is no reason to refuse another edit. */
const changedRefs = (refs: Refs, before: object, after: object): Refs => {
  const [was, is] = [before, after] as readonly Readonly<Record<string, unknown>>[]
  return Object.fromEntries(Object.entries(refs).filter(([key]) => was?.[key] !== is?.[key]))
}

/** Changes fields of a record that is still as the caller saw it, in the caller's transaction. */
export const editRecord = async <T extends Coded>(
  transaction: Database,
  desk: Desk,
  store: CodedStore<T>,
  { id, version }: Seen,
  fields: Partial<Omit<T, keyof Coded>>,
): Promise<Result<Made<T>>> => {
  const before = await needRecord(transaction, store, id)
  if (!before.ok) return before
  const after = { ...before.value, ...fields }
  const refs = await checkRefs(transaction, changedRefs(store.refs ?? {}, before.value, after), after)
  if (!refs.ok) return refs
  return commitStep(transaction, desk, store, { id, seen: version, before: before.value, after, action: 'edited' })
}

/** Removes a record that is still as the caller saw it; it can be had back by undo. */
export const removeRecord = async <T extends Coded>(
  transaction: Database,
  desk: Desk,
  store: CodedStore<T>,
  { id, version }: Seen,
): Promise<Result<Made<null>>> => {
  const before = await needRecord(transaction, store, id)
  if (!before.ok) return before
  return commitStep(transaction, desk, store, {
    id,
    seen: version,
    before: before.value,
    after: null,
    action: 'removed',
  })
}

/** What a noun asks of its records beyond their schema and references; asked in the transaction that writes. */
interface Rules<T> {
  mayStand?(db: Database, record: T): Promise<Result<null>>
  mayGo?(db: Database, id: string): Promise<Result<null>>
}

/** List, add, edit and remove for a noun whose records are what the user says of them. */
export const recordServices = <T extends Coded>(desk: Desk, store: CodedStore<T>, rules: Rules<T> = {}) => {
  /** One transaction, and word of it to every client once it is kept. */
  const command = async <V>(
    context: CallContext,
    idOf: (made: Made<V>) => string,
    work: (db: Database) => Promise<Result<Made<V>>>,
  ) => {
    const made = await desk.access.write(work)
    if (made.ok) context.changed(store.noun, [idOf(made.value)])
    return made
  }
  /** A record as it was written, taken back with the transaction where it may not stand so. */
  const standing = async (db: Database, writing: Promise<Result<Made<T>>>): Promise<Result<Made<T>>> => {
    const made = await writing
    const may = made.ok ? await rules.mayStand?.(db, made.value.value) : undefined
    return may?.ok === false ? may : made
  }
  return {
    list: async () => ok(await desk.access.read((db) => listRecords(db, store))),
    add: (draft: Omit<T, keyof Coded>, context: CallContext) =>
      command<T>(
        context,
        ({ value }) => value.id,
        (db) => standing(db, addRecord(db, desk, store, draft)),
      ),
    edit: ({ draft, ...seen }: Seen & { draft: Omit<T, keyof Coded> }, context: CallContext) =>
      command<T>(
        context,
        () => seen.id,
        (db) => standing(db, editRecord(db, desk, store, seen, draft as Partial<Omit<T, keyof Coded>>)),
      ),
    remove: (seen: Seen, context: CallContext) =>
      command<null>(
        context,
        () => seen.id,
        async (db) => {
          const may = await rules.mayGo?.(db, seen.id)
          return may?.ok === false ? may : removeRecord(db, desk, store, seen)
        },
      ),
  }
}

type Handlers<N extends string, S> = {
  readonly [K in keyof S & string as `${N}.${K}`]: S[K]
}

/** @returns the services under the names of their calls */
export const named = <const N extends string, S extends object>(noun: N, services: S): Handlers<N, S> =>
  Object.fromEntries(Object.entries(services).map(([name, work]) => [`${noun}.${name}`, work])) as Handlers<N, S>

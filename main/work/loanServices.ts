import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { CallInput } from '../contract/calls.ts'
import type { NamedLoan } from '../contract/errand.ts'
import type { Loan } from '../contract/people.ts'
import { asOne, type Made, onlyValue } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import { listOf, listRecords, needRecord } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { alike } from '../people/sameName.ts'
import { addRecord, editRecord } from '../rack/recordServices.ts'
import { loanStore, personStore } from '../rack/stores.ts'
import { holderOf, toolStore } from '../rack/tool.ts'
import type { CallContext, Services } from '../services.ts'
import { toEach } from './toEach.ts'

/** The person of this name; made where there is none. Names are compared here, since SQLite knows the capitals of ASCII alone. */
export const personNamed = async (db: Database, desk: Desk, name: string): Promise<Result<string>> => {
  const people = await listRecords(db, personStore)
  const known = people.find((person) => alike(person.name) === alike(name))
  if (known) return ok(known.id)
  const made = await addRecord(db, desk, personStore, { name, apprentice: 'no' })
  return made.ok ? ok(made.value.value.id) : made
}

const lendOne = async (
  db: Database,
  desk: Desk,
  toolId: string,
  given: Pick<Loan, 'personId' | 'dueBack'>,
): Promise<Result<Loan>> => {
  const tool = await needRecord(db, toolStore, toolId, 'toolIds')
  if (!tool.ok) return tool
  const holder = await holderOf(db, toolId)
  if (holder !== '') return failed(problem('alreadyLent', 'toolIds', { code: tool.value.code, holder }))
  const lentAt = desk.now().toISOString()
  return onlyValue(await addRecord(db, desk, loanStore, { ...given, toolId, lentAt, returnedAt: null, note: '' }))
}

const giveBackOne = async (db: Database, desk: Desk, toolId: string): Promise<Result<Loan>> => {
  const tool = await needRecord(db, toolStore, toolId, 'toolIds')
  if (!tool.ok) return tool
  const loan = await db
    .selectFrom('loan')
    .select(['id', 'version'])
    .where('toolId', '=', toolId)
    .where('returnedAt', 'is', null)
    .where('deletedAt', 'is', null)
    .executeTakeFirst()
  if (!loan) return failed(problem('notLent', 'toolIds', { code: tool.value.code }))
  return onlyValue(await editRecord(db, desk, loanStore, loan, { returnedAt: desk.now().toISOString() }))
}

/** Lends tools to somebody by name, in the caller's transaction. */
export const lendAll = async (
  db: Database,
  desk: Desk,
  { toolIds, person, dueBack = null }: CallInput<'loan.lend'>,
): Promise<Result<Loan[]>> => {
  const personId = await personNamed(db, desk, person)
  if (!personId.ok) return personId
  return toEach(toolIds, (id) => lendOne(db, desk, id, { personId: personId.value, dueBack }))
}

/** Takes lent tools back, in the caller's transaction. */
export const giveBackAll = (db: Database, desk: Desk, toolIds: readonly string[]): Promise<Result<Loan[]>> =>
  toEach(toolIds, (id) => giveBackOne(db, desk, id))

/** Who has had a tool, newest first. A name that was taken out for good is the code that stands for it. */
const loansOf = async (db: Database, toolId: string): Promise<NamedLoan[]> => {
  const loans = await listOf(db, loanStore, { column: 'toolId', id: toolId, by: 'lentAt' })
  const ids = [...new Set(loans.map(({ personId }) => personId))]
  const people =
    ids.length === 0 ? [] : await db.selectFrom('person').select(['id', 'name']).where('id', 'in', ids).execute()
  const names = new Map(people.map(({ id, name }) => [id, name]))
  return loans.map((loan) => ({ ...loan, person: names.get(loan.personId) ?? '' }))
}

/** The calls of lending: many tools are one change, with one undo. */
export const loanServices = (desk: Desk): Pick<Services, 'loan.list' | 'loan.lend' | 'loan.return'> => {
  const tell = (made: Result<Made<Loan[]>>, context: CallContext) => {
    if (!made.ok) return made
    context.changed('person', [])
    context.changed(
      'loan',
      made.value.value.map(({ id }) => id),
    )
    return made
  }
  return {
    'loan.list': async ({ toolId }) => ok(await desk.access.read((db) => loansOf(db, toolId))),
    'loan.lend': async (given, context) =>
      tell(await desk.access.write((db) => asOne(db, () => lendAll(db, desk, given))), context),
    'loan.return': async ({ toolIds }, context) =>
      tell(await desk.access.write((db) => asOne(db, () => giveBackAll(db, desk, toolIds))), context),
  }
}

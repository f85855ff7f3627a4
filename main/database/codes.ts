import { codeOf } from '../contract/codes.ts'
import type { CodedNoun } from './recordStore.ts'
import type { Database } from './schema.ts'

const lastCode = async (transaction: Database, noun: CodedNoun): Promise<number> =>
  (await transaction.selectFrom('codeCounter').select('last').where('noun', '=', noun).executeTakeFirst())?.last ?? 0

const countTo = async (transaction: Database, noun: CodedNoun, last: number): Promise<void> => {
  const counter = transaction.insertInto('codeCounter').values({ noun, last })
  await counter.onConflict((there) => there.column('noun').doUpdateSet({ last })).execute()
}

/**
 * Codes for many records at once, in the transaction that uses them.
 *
 * @param given codes that are used beside; the counter goes past them too, so that none comes again
 * @returns so many codes that were never given out and are not among the given ones
 */
export const reserveCodes = async (
  transaction: Database,
  noun: CodedNoun,
  count: number,
  given: readonly string[],
): Promise<readonly string[]> => {
  const before = await lastCode(transaction, noun)
  const first = given.reduce((most, code) => Math.max(most, Number(code.replace(/\D/g, ''))), before) + 1
  const last = first + count - 1
  if (last > before) await countTo(transaction, noun, last)
  return Array.from({ length: count }, (_, i) => codeOf(noun, first + i))
}

/**
 * The next code of a noun. Call it in the transaction that uses it. The counter outlives the records, so a label once
 * printed never comes to mean another tool.
 */
export const nextCode = async (transaction: Database, noun: CodedNoun): Promise<string> => {
  const { last } = await transaction
    .insertInto('codeCounter')
    .values({ noun, last: 1 })
    .onConflict((there) => there.column('noun').doUpdateSet((row) => ({ last: row('codeCounter.last', '+', 1) })))
    .returning('last')
    .executeTakeFirstOrThrow()
  return codeOf(noun, last)
}

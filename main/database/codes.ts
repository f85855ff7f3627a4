import { codeOf } from '../contract/codes.ts'
import type { CodedNoun } from './recordStore.ts'
import type { Database } from './schema.ts'

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

import type { CodedNoun } from './recordStore.ts'
import type { Database } from './schema.ts'

/** Tools carry a bare number, as painted on a rack; the rest a letter before it. */
const codeForms = {
  tool: (number: number) => String(number).padStart(2, '0'),
  station: (number: number) => `S${number}`,
  fixture: (number: number) => `F${number}`,
  job: (number: number) => `J${number}`,
  benchLog: (number: number) => `L${number}`,
  place: (number: number) => `P${number}`,
  person: (number: number) => `N${number}`,
  loan: (number: number) => `B${number}`,
  happening: (number: number) => `H${number}`,
  dressing: (number: number) => `D${number}`,
  photo: (number: number) => `I${number}`,
  purpose: (number: number) => `U${number}`,
  ownField: (number: number) => `O${number}`,
  keptFilter: (number: number) => `K${number}`,
  toolTemplate: (number: number) => `T${number}`,
  stocktake: (number: number) => `C${number}`,
  sighting: (number: number) => `V${number}`,
  queueEntry: (number: number) => `Q${number}`,
} as const satisfies Record<CodedNoun, (number: number) => string>

const letterOf = (noun: CodedNoun): string => codeForms[noun](1).replace(/\d/g, '')

/** Most digits of a number that is taken for a code. */
const CODE = /^([A-Z]?)0*([1-9]\d{0,8})$/

/** @returns a typed code as the noun writes it, `7` as `07`; null where it is none of this noun's */
export const codeOf = (noun: CodedNoun, typed: string): string | null => {
  const [, letter, number] = CODE.exec(typed.trim().toUpperCase()) ?? []
  return number !== undefined && letter === letterOf(noun) ? codeForms[noun](Number(number)) : null
}

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
  return Array.from({ length: count }, (_, i) => codeForms[noun](first + i))
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
  return codeForms[noun](last)
}

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

import { type Quantity, quantities } from '../../geometry/quantities.ts'
import type { ColumnUse } from '../contract/inOut.ts'
import { language } from '../contract/language.ts'
import { createTexts } from '../texts.ts'
import { type ChoiceWords, folded } from './cells.ts'
import type { Column } from './columns.ts'
import type { NounForm } from './nouns.ts'

/** Heads of columns are told by our own names and by the words that the program shows for them, with or without a unit. */
let texts = createTexts()
const spokenTexts = (): typeof texts => {
  if (texts.language !== language()) texts = createTexts()
  return texts
}

const textAt = (key: string): readonly string[] => (spokenTexts().exists(key) ? [spokenTexts().t(key)] : [])

const sectionsWith = (key: string): readonly string[] =>
  Object.entries(quantities as Record<string, Record<string, Quantity>>)
    .filter(([, section]) => Object.hasOwn(section, key))
    .map(([name]) => name)

const UNIT_ENDING = /(MPerS|Mm|Deg|Rpm|C|Px|Minutes)$/

/** A key as one would say it: `wheelDiameterMm` is “wheel diameter”. */
const spoken = (key: string): string =>
  key
    .replace(UNIT_ENDING, '')
    .replace(/([A-Z])/g, ' $1')
    .trim()

/** What is said before a comma names an entry; what follows explains it. */
const namesOf = ({ noun }: NounForm, { key, head }: Column): readonly string[] => [
  key,
  head,
  spoken(key),
  ...textAt(`rack:field.${key}`).map((text) => text.split(',')[0] as string),
  ...textAt(`inOut:head.${noun}.${head}`),
  ...textAt(`inOut:head.any.${head}`),
  ...sectionsWith(key).flatMap((section) => textAt(`quantities:${section}.${key}.name`)),
]

/** @returns the name of an entry for people */
export const entryName = (form: NounForm, column: Column): string =>
  [
    ...textAt(`inOut:head.${form.noun}.${column.head}`),
    ...textAt(`inOut:head.any.${column.head}`),
    ...textAt(`rack:field.${column.key}`).map((text) => text.split(',')[0] as string),
    ...sectionsWith(column.key).flatMap((section) => textAt(`quantities:${section}.${column.key}.name`)),
    spoken(column.head),
  ][0] as string

const lengthWords: readonly (readonly [RegExp, ColumnUse['lengthUnit']])[] = [
  [/[\s([,/]*(?:mm|millimet(?:re|er)s?)[\s)\].]*$/i, 'mm'],
  [/[\s([,/]+(?:thou|thousandths)[\s)\].]*$/i, 'thou'],
  [/[\s([,/]*(?:"|″|\b(?:in\.?|inch|inches|zoll))[\s)\]]*$/i, 'inch'],
]
const OTHER_UNIT = /[\s([,/]+(?:deg|degrees|°|rpm|m\/s|min|minutes|days|°c|px)[\s)\].]*$/i

/** What a head says: its name without the unit, and the unit of length that stands in it. */
const readHead = (head: string): { readonly name: string; readonly lengthUnit: ColumnUse['lengthUnit'] | null } => {
  const found = lengthWords.find(([ending]) => ending.test(head) && head.replace(ending, '') !== '')
  return found
    ? { name: head.replace(found[0], ''), lengthUnit: found[1] }
    : { name: head.replace(OTHER_UNIT, ''), lengthUnit: null }
}

export const ID_COLUMN = 'id'
export const CODE_COLUMN = 'code'
const codeNames = [CODE_COLUMN, 'number', 'no', 'no.', 'nr', 'tool number', 'key']

const readNames = (form: NounForm): ReadonlyMap<string, string> => {
  const names = new Map<string, string>([
    [ID_COLUMN, ID_COLUMN],
    ...codeNames.map((name): [string, string] => [name, CODE_COLUMN]),
  ])
  // Our own keys come first: no word of the catalogue takes one from another column.
  for (const { key, head } of form.columns) for (const name of [key, head]) names.set(folded(name), key)
  for (const column of form.columns)
    for (const name of namesOf(form, column)) if (!names.has(folded(name))) names.set(folded(name), column.key)
  return names
}

/** A language's catalogue does not change, and a head is compared with the names of every noun. */
const namesOfNoun = new Map<string, ReadonlyMap<string, string>>()

const knownNames = (form: NounForm): ReadonlyMap<string, string> => {
  const key = `${language()} ${form.noun}`
  const names = namesOfNoun.get(key) ?? readNames(form)
  namesOfNoun.set(key, names)
  return names
}

/** @param lengthUnit of columns that name none; our own names say millimetres. @returns what each column is taken for */
export const guessUses = (
  form: NounForm,
  head: readonly string[],
  lengthUnit: ColumnUse['lengthUnit'],
): readonly ColumnUse[] => {
  const names = knownNames(form)
  const taken = new Set<string>()
  return head.map((each) => {
    const read = readHead(each)
    const key = names.get(folded(each)) ?? names.get(folded(read.name)) ?? null
    const free = key !== null && !taken.has(key)
    if (free) taken.add(key)
    const isOurs = key !== null && folded(each) === folded(key)
    return { key: free ? key : null, lengthUnit: isOurs ? 'mm' : (read.lengthUnit ?? lengthUnit) }
  })
}

/** Where the words of choices stand in the catalogue, by noun and key, or by key alone. */
const choiceTexts: Readonly<Record<string, string>> = {
  'tool.kind': 'common:toolKind',
  'fixture.kind': 'common:fixtureKind',
  dotCorner: 'common:side',
  bevelSide: 'common:bevelSide',
  rotation: 'common:rotation',
  cooling: 'common:cooling',
  barPlace: 'common:barPlace',
  barMeasure: 'common:barMeasure',
  seatsOn: 'common:seatsOn',
  learning: 'common:learning',
  stage: 'common:stage',
  condition: 'common:condition',
}

/** @returns the options of a choice by what may stand in a cell for them */
export const choiceWordsOf = ({ noun }: NounForm, { key, holds }: Column): ChoiceWords => {
  if (holds.kind !== 'choice') return new Map()
  const texts = choiceTexts[`${noun}.${key}`] ?? choiceTexts[key]
  const words = holds.options.flatMap((option) =>
    (texts === undefined ? [] : textAt(`${texts}.${option}`)).map((text): [string, string] => [folded(text), option]),
  )
  return new Map([...words, ...holds.options.map((option): [string, string] => [folded(option), option])])
}

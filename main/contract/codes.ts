/**
 * Short codes, as painted on a rack and printed on labels: given once, never again. Tools carry a bare number, the rest a
 * letter before it, so that a code alone says what it is the code of.
 */
const codeLetters = {
  ...{ tool: '', station: 'S', fixture: 'F', job: 'J', benchLog: 'L' },
  ...{ place: 'P', person: 'N', loan: 'B', happening: 'H', dressing: 'D', photo: 'I' },
  ...{ purpose: 'U', ownField: 'O', keptFilter: 'K', toolTemplate: 'T' },
  ...{ stocktake: 'C', sighting: 'V', queueEntry: 'Q', lesson: 'E' },
} as const

export type CodedNoun = keyof typeof codeLetters

/** A bare number has at least two figures. */
const FIGURES_OF_TOOL = 2

/** @param number 1 or more @returns the code of the noun's record of this number */
export const codeOf = (noun: CodedNoun, number: number): string =>
  codeLetters[noun] === '' ? String(number).padStart(FIGURES_OF_TOOL, '0') : `${codeLetters[noun]}${number}`

/** As many figures as the contract lets a code have. */
const TYPED = /^([a-z]?) ?(\d{1,11})$/i

/** More figures than any rack will need, few enough that the next code is still one. */
const MOST_FIGURES = 9

/** @returns a code of this noun as typed in a file, `7` as `07`; null where it is none of this noun's */
export const codeOfNoun = (noun: CodedNoun, text: string): string | null => {
  const [, letter = '', figures = ''] = TYPED.exec(text.trim()) ?? []
  const number = Number(figures)
  if (letter.toUpperCase() !== codeLetters[noun] || number < 1 || number >= 10 ** MOST_FIGURES) return null
  return codeOf(noun, number)
}

/** Nouns that carry labels and can be opened by their code. A new one is a line here, in main/labels and in renderer/scan. */
export const labelNouns = ['tool', 'station', 'fixture', 'place'] as const
export type LabelNoun = (typeof labelNouns)[number]

/** A code, and what it is the code of. */
export interface ReadCode {
  readonly noun: LabelNoun
  readonly code: string
}

/** @returns what a code as typed means, `7` or `s1` too; null where it is none, or of nothing that can be opened */
export const readCode = (text: string): ReadCode | null => {
  const [, letter = '', figures = ''] = TYPED.exec(text.trim()) ?? []
  const noun = labelNouns.find((each) => codeLetters[each] === letter.toUpperCase())
  return noun === undefined || figures === '' ? null : { noun, code: codeOf(noun, Number(figures)) }
}

/** Stands before a code wherever a machine reads it, so that nothing else in a workshop can be taken for one. */
export const MARK = 'CW:'

/** What a code to be read by machine holds. On a job card the job's code follows the tool's. */
export const markOf = (code: string, jobCode = ''): string => `${MARK}${code}${jobCode === '' ? '' : `/${jobCode}`}`

/** @returns what a reader read; null where it is none of our marks */
export const readMark = (text: string): ReadCode | null => {
  const mark = text.trim().toUpperCase()
  return mark.startsWith(MARK) ? readCode(mark.slice(MARK.length).replace(/\/.*$/, '')) : null
}

/** @returns what was typed or read, whichever of the two it is */
export const readTypedOrMark = (text: string): ReadCode | null => readMark(text) ?? readCode(text)

import { type Steel, temperRanges } from '../../geometry/heat.ts'

export const steels = Object.keys(temperRanges) as Steel[]

type Names = readonly (readonly [RegExp, Steel])[]

/** Grades, as they are stamped and written: O1 and O-1. */
const grades: Names = [
  [/\bw-?1\b/i, 'W1'],
  [/\bo-?1\b/i, 'O1'],
  [/\ba-?2\b/i, 'A2'],
  [/\bd-?2\b/i, 'D2'],
  [/\b52100\b/, '52100'],
  [/\bm-?2\b/i, 'M2'],
]

/** Words of the trade that name a steel closely enough; carbon only where nothing else is said, since most tool steels are high in it. */
const trade: Names = [
  [/water.?harden/i, 'W1'],
  [/oil.?harden/i, 'O1'],
  [/air.?harden/i, 'A2'],
  [/ball.?bearing|bearing steel/i, '52100'],
  [/high.?speed|\bhss\b/i, 'M2'],
  [/^\s*(plain )?carbon( tool)?( steel)?\s*$/i, 'W1'],
]

const found = (names: Names, words: string): readonly Steel[] =>
  names.filter(([name]) => name.test(words)).map(([, steel]) => steel)

/** @returns the steel that a tool's words name, a grade before words of the trade; null: none that is known here, or more than one */
export const steelNamed = (words: string): Steel | null => {
  const named = found(grades, words)
  const read = named.length > 0 ? named : found(trade, words)
  return read.length === 1 ? (read[0] as Steel) : null
}

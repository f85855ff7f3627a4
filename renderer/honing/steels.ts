import { type Steel, temperRanges } from '../../geometry/heat.ts'

export const steels = Object.keys(temperRanges) as Steel[]

/** Words of the trade that name a steel closely enough. */
const names: readonly (readonly [RegExp, Steel])[] = [
  [/\bw ?1\b|water.?harden|carbon/i, 'W1'],
  [/\bo ?1\b|oil.?harden/i, 'O1'],
  [/\ba ?2\b|air.?harden/i, 'A2'],
  [/\bd ?2\b/i, 'D2'],
  [/52100|ball.?bearing/i, '52100'],
  [/\bm ?2\b|high.?speed|\bhss\b/i, 'M2'],
]

/** @returns the steel that a tool's words name; null: none that is known here */
export const steelNamed = (words: string): Steel | null => names.find(([name]) => name.test(words))?.[1] ?? null

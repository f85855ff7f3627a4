import Papa from 'papaparse'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { delimiters } from '../contract/inOut.ts'

/**
 * Tables as RFC 4180 describes them: cells parted by commas, lines by CR LF, quotation marks around a cell that holds
 * any of these, and doubled within it. Read are also semicolons and tabs, and lines that end by LF or CR alone.
 */
export type Delimiter = (typeof delimiters)[number]

/** What a spreadsheet takes for a formula: cells that begin so, and those that were guarded before. */
const FORMULA = /^'*[=+\-@\t\r]/

/** Words as a cell: an apostrophe keeps a spreadsheet from working them out. Figures are no words and need none. */
export const guarded = (words: string): string => (FORMULA.test(words) ? `'${words}` : words)

/** A cell as it was before it was guarded. */
export const unguarded = (cell: string): string => (cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell)

/** Spreadsheets read a table as UTF-8 only where it begins so. */
const BYTE_ORDER_MARK = '\ufeff'
const LINE_END = '\r\n'

/** @returns the file's text, with a mark that says it is UTF-8 */
export const writeCsv = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  BYTE_ORDER_MARK +
  Papa.unparse({ fields: [...head], data: rows as string[][] }, { newline: LINE_END, header: true }) +
  LINE_END

/** A table as it stands in a file. `line` counts from 1, the head included, lines within a cell not. */
export interface Table {
  readonly delimiter: Delimiter
  readonly head: readonly string[]
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[]
}

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '')

/** A cell in quotation marks, those within it doubled. */
const QUOTED = /"(?:[^"]|"")*"/g
/** Far more than any head takes. */
const HEAD_LETTERS = 100_000

/** How the first line ends and what parts its cells most often, looked at outside quotation marks alone: what stands within could be anything. */
const mannerOf = (text: string): { readonly newline: '\r\n' | '\n' | '\r'; readonly delimiter: Delimiter } => {
  const bare = text.slice(0, HEAD_LETTERS).replace(QUOTED, '')
  const newline = (/\r\n|\n|\r/.exec(bare)?.[0] ?? '\n') as '\r\n' | '\n' | '\r'
  const [line = ''] = bare.split(newline, 1)
  const count = (sign: string): number => line.split(sign).length
  return { newline, delimiter: delimiters.reduce((best, sign) => (count(sign) > count(best) ? sign : best)) }
}

/** Lines may end in more than one way where a table was put together by hand. */
const withoutReturn = (cells: readonly string[]): readonly string[] =>
  cells.map((cell, i) => (i === cells.length - 1 ? cell.replace(/\r$/, '') : cell))

/** @param delimiter null: as it looks. @returns the table, or `tableEmpty`, `tableQuotes` with its line */
export const readCsv = (text: string, delimiter: Delimiter | null): Result<Table> => {
  const manner = mannerOf(text)
  const used = delimiter ?? manner.delimiter
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: used, newline: manner.newline })
  const broken = errors.find(({ type }) => type === 'Quotes')
  if (broken) return failed(problem('tableQuotes', '', { line: (broken.row ?? 0) + 1 }))
  const [head, ...rows] = data
    .map((cells, i) => ({ line: i + 1, cells: withoutReturn(cells).map(unguarded) }))
    .filter(({ cells }) => !isBlank(cells))
  if (!head) return failed(problem('tableEmpty'))
  return ok({ delimiter: used, head: head.cells, rows })
}

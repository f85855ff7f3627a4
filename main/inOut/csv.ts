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

const isDelimiter = (sign: string): sign is Delimiter => (delimiters as readonly string[]).includes(sign)

/** @param delimiter null: as it looks. @returns the table, or `tableEmpty`, `tableQuotes` with its line */
export const readCsv = (text: string, delimiter: Delimiter | null): Result<Table> => {
  const { data, errors, meta } = Papa.parse<string[]>(text, {
    delimiter: delimiter ?? '',
    delimitersToGuess: [...delimiters],
  })
  const broken = errors.find(({ type }) => type === 'Quotes')
  if (broken) return failed(problem('tableQuotes', '', { line: (broken.row ?? 0) + 1 }))
  const [head, ...rows] = data
    .map((cells, i) => ({ line: i + 1, cells: cells.map(unguarded) }))
    .filter(({ cells }) => !isBlank(cells))
  if (!head) return failed(problem('tableEmpty'))
  return ok({ delimiter: isDelimiter(meta.delimiter) ? meta.delimiter : ',', head: head.cells, rows })
}

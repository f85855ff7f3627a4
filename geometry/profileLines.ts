import { failed, ok, problem, type Result } from './result.ts'

/** A row of a profile, its figures as the file has them. */
export interface ProfileRow {
  /** Of the file, from 1. */
  readonly line: number
  readonly place: number
  readonly height: number
}

interface Line {
  readonly number: number
  readonly text: string
}

interface Table {
  /** Words over the columns; null: none. */
  readonly header: string | null
  readonly lines: readonly Line[]
}

const FEWEST_ROWS = 3
const FIGURE = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?$/i
/** What programs write where a figure is missing: no name of a column. */
const VOID = /^[+-]?(?:nan|inf|infinity|null|nil|none|n\/?a)$/i
const BEGUN_AS_FIGURE = /^[+-]?[.,]?\d/
const UNIT = /^[[(]?(?:mm|µm|μm|um|in|inch|inches|thou)[\])]?$/i
const GROUPED = /^[+-]?\d{1,3}\s\d{3},\d+$/

const plain = (text: string): string => text.trim().replace(/−/g, '-')

/** Null for what is no figure, and for one too large to be reckoned with. */
const figureOf = (cell: string): number | null => {
  const text = plain(cell)
  const figure = FIGURE.test(text) ? Number(text.replace(',', '.')) : Number.NaN
  return Number.isFinite(figure) ? figure : null
}

/** Lines with something in them; `#` begins a remark. */
const linesOf = (text: string): readonly Line[] =>
  text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .map((line, i) => ({ number: i + 1, text: line.trim() }))
    .filter((line) => line.text !== '' && !line.text.startsWith('#'))

const isWord = (text: string): boolean => /\p{L}/u.test(text) && !BEGUN_AS_FIGURE.test(text) && !VOID.test(text)

/** A header names columns: nothing in it is a figure, begun as one, or what stands for a missing one. */
const isHeader = (text: string): boolean => {
  const parts = plain(text)
    .split(/[\t;,\s]+/)
    .filter((part) => part !== '')
  return parts.some(isWord) && parts.every((part) => isWord(part) || !/[\p{L}\d]/u.test(part))
}

const tableOf = (lines: readonly Line[]): Table => {
  const first = lines[0]
  return first && isHeader(first.text) ? { header: first.text, lines: lines.slice(1) } : { header: null, lines }
}

/** Two words with a comma between, unless the second is but the unit of the first. */
const namesTwo = (header: string | null): boolean => {
  const [first, second, ...more] = (header ?? '').split(',').map((name) => name.trim())
  if (!first || !second || more.length > 0) return false
  return isWord(first) && isWord(second) && (UNIT.test(first) || !UNIT.test(second))
}

/** A point after the comma, or one before it that does not part thousands. */
const hasDecimalPoint = (text: string): boolean => /,[^,]*\.|\.(?!\d{3},)/.test(text)

/** `12,5` may be a figure or two: a comma parts columns only where the points are decimal, or a header says so. */
const commaParts = ({ header, lines }: Table): boolean =>
  namesTwo(header) || lines.some((line) => hasDecimalPoint(line.text))

/** What parts the figures of a line; null where that could be taken in two ways. */
const separatorOf = (table: Table): RegExp | null => {
  const every = (test: (text: string) => boolean) => table.lines.every((line) => test(line.text))
  if (every((text) => text.includes('\t'))) return /\t/
  if (every((text) => text.includes(';'))) return /;/
  if (every((text) => /\s/.test(text) && !/,\s|\s,/.test(text)))
    return every((text) => GROUPED.test(text)) ? null : /\s+/
  if (every((text) => text.split(',').length === 2)) return commaParts(table) ? /,/ : null
  return null
}

const rowOf = (line: Line, separator: RegExp): Result<ProfileRow> => {
  const cells = line.text.split(separator)
  if (cells.length !== 2) return failed(problem('profileCells', 'file', { line: line.number, cells: cells.length }))
  const [place, height] = cells.map(figureOf)
  if (place == null || height == null)
    return failed(problem('profileFigure', 'file', { line: line.number, text: line.text.slice(0, 40) }))
  return ok({ line: line.number, place, height })
}

/**
 * The rows of a text with two columns of figures; decimal marks may be points or commas.
 * @returns `profileTooFew`, `profileSeparator`, `profileCells`, `profileFigure`, with its line where it has one; nothing is read in part
 */
export const profileRows = (text: string): Result<readonly ProfileRow[]> => {
  const table = tableOf(linesOf(text))
  if (table.lines.length < FEWEST_ROWS) return failed(problem('profileTooFew', 'file', { rows: table.lines.length }))
  const separator = separatorOf(table)
  if (separator === null) return failed(problem('profileSeparator', 'file'))
  const rows: ProfileRow[] = []
  for (const line of table.lines) {
    const row = rowOf(line, separator)
    if (!row.ok) return row
    rows.push(row.value)
  }
  return ok(rows)
}

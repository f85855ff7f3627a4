import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { Offer as Asked, ColumnUse, Look } from '../contract/inOut.ts'
import { isZip, readBundle } from './bundle.ts'
import { readCsv, type Table } from './csv.ts'
import { readDocument } from './document.ts'
import { CODE_COLUMN, entryName, guessUses, ID_COLUMN } from './heads.ts'
import { formOf, type NounForm } from './nouns.ts'
import type { Offer, Offered } from './offered.ts'
import { guessNoun, readTable } from './readTable.ts'
import { textOf } from './text.ts'

/** A file that was handed in, read as far as it goes without the rack. */
export interface OpenedFile {
  readonly form: Look['form']
  readonly offer: Offer
  readonly table: Look['table']
}

/** Rows of a table that are shown as they stand. */
const ROWS_SHOWN = 8
/** Most letters shown of a cell. */
const CELL_SHOWN = 80

const isLength = (form: NounForm, key: string | null): boolean => {
  const holds = form.columns.find((column) => column.key === key)?.holds
  return holds?.kind === 'figure' && holds.unit === 'mm'
}

const keysOf = (form: NounForm): NonNullable<Look['table']>['keys'] => [
  ...[CODE_COLUMN, ID_COLUMN].map((key) => ({ key, name: key, isLength: false })),
  ...form.columns.map((column) => ({
    key: column.key,
    name: entryName(form, column),
    isLength: isLength(form, column.key),
  })),
]

const shownTable = (form: NounForm, table: Table, uses: readonly ColumnUse[]): Look['table'] => ({
  delimiter: table.delimiter,
  columns: table.head.map((header, i) => {
    const { key, lengthUnit } = uses[i] as ColumnUse
    return { header: header.slice(0, CELL_SHOWN), key, lengthUnit, isLength: isLength(form, key), hasKey: key !== null }
  }),
  keys: keysOf(form),
  rows: table.rows
    .slice(0, ROWS_SHOWN)
    .map(({ line, cells }) => ({ row: line, cells: cells.map((cell) => cell.slice(0, CELL_SHOWN)) })),
  keyed: uses.some(({ key }) => key === CODE_COLUMN || key === ID_COLUMN),
})

const openTable = (text: string, asked: Asked, lengthUnit: ColumnUse['lengthUnit']): Result<OpenedFile> => {
  const table = readCsv(text, asked.delimiter)
  if (!table.ok) return table
  const { head } = table.value
  if (asked.noun === 'photo') return failed(problem('photosNoTable'))
  const form = asked.noun === null ? guessNoun(head) : formOf(asked.noun)
  const given = asked.columns?.length === head.length ? asked.columns : null
  const uses = given ?? guessUses(form, head, lengthUnit)
  const offered = readTable(form, table.value, uses)
  return ok({
    form: 'csv',
    offer: { nouns: [offered], photos: new Map() },
    table: shownTable(form, table.value, uses),
  })
}

const openDocument = (
  form: 'json' | 'bundle',
  bytes: Uint8Array,
  photos: ReadonlyMap<string, Uint8Array>,
): Result<OpenedFile> => {
  const text = textOf(bytes)
  if (!text.ok) return text
  const nouns: Result<readonly Offered[]> = readDocument(text.value)
  return nouns.ok ? ok({ form, offer: { nouns: nouns.value, photos }, table: null }) : nouns
}

/** @param lengthUnit of columns that name none. @returns what a file offers, told by its contents and not by its name */
export const openFile = (bytes: Uint8Array, asked: Asked, lengthUnit: ColumnUse['lengthUnit']): Result<OpenedFile> => {
  if (isZip(bytes)) {
    const bundle = readBundle(bytes)
    return bundle.ok ? openDocument('bundle', bundle.value.document, bundle.value.photos) : bundle
  }
  const text = textOf(bytes)
  if (!text.ok) return text
  return text.value.trimStart().startsWith('{')
    ? openDocument('json', bytes, new Map())
    : openTable(text.value, asked, lengthUnit)
}

import { type Problem, problem, type Result } from '../../geometry/result.ts'
import type { ColumnUse } from '../contract/inOut.ts'
import { readCell } from './cells.ts'
import type { Column } from './columns.ts'
import type { Table } from './csv.ts'
import { CODE_COLUMN, choiceWordsOf, guessUses, ID_COLUMN } from './heads.ts'
import { allForms, formOf, type NounForm } from './nouns.ts'
import type { Offered, OfferedRow } from './offered.ts'

/** How many entries of a noun a head names; a head that names them all is told from one that names as many of a longer noun. */
const fitOf = (form: NounForm, head: readonly string[]): number => {
  const named = new Set(guessUses(form, head, 'mm').flatMap(({ key }) => key ?? []))
  const isWhole = form.columns.every(({ key }) => named.has(key))
  return named.size + (isWhole ? 0.5 : 0)
}

/** @returns the noun whose columns the head of a table names most of; tools where it names none */
export const guessNoun = (head: readonly string[]): NounForm => {
  const others = allForms.filter(({ noun }) => noun !== 'photo' && noun !== 'tool')
  return others.reduce((best, form) => (fitOf(form, head) > fitOf(best, head) ? form : best), formOf('tool'))
}

type ReadAs = (cell: string) => Result<unknown>

interface UsedColumn {
  readonly at: number
  readonly key: string
  readonly read: ReadAs
}

const usedColumns = (form: NounForm, uses: readonly ColumnUse[]): readonly UsedColumn[] => {
  const columns = new Map<string, Column>(form.columns.map((column) => [column.key, column]))
  return uses.flatMap(({ key, lengthUnit }, at) => {
    const column = key === null ? undefined : columns.get(key)
    if (!column) return []
    const choices = choiceWordsOf(form, column)
    return [{ at, key: column.key, read: (cell) => readCell(column, cell, lengthUnit, choices) }]
  })
}

const cellAt = (cells: readonly string[], uses: readonly ColumnUse[], key: string): string | null => {
  const at = uses.findIndex((use) => use.key === key)
  return cells[at]?.trim() || null
}

const rowOf = (
  { line, cells }: Table['rows'][number],
  width: number,
  uses: readonly ColumnUse[],
  columns: readonly UsedColumn[],
): OfferedRow => {
  const says: Record<string, unknown> = {}
  const problems: Problem[] = []
  for (const { at, key, read } of columns) {
    const value = read(cells[at] ?? '')
    if (!value.ok) problems.push(...value.problems.map((each) => ({ ...each, path: key })))
    else if (value.value !== undefined) says[key] = value.value
  }
  if (cells.length > width) problems.push(problem('rowTooLong', '', { cells: cells.length, columns: width }))
  return { row: line, id: cellAt(cells, uses, ID_COLUMN), code: cellAt(cells, uses, CODE_COLUMN), says, problems }
}

/** @returns what a table offers of a noun, its columns taken for what `uses` says */
export const readTable = (form: NounForm, table: Table, uses: readonly ColumnUse[]): Offered => {
  const columns = usedColumns(form, uses)
  const heads = columns.map(({ key, at }): [string, string] => [key, table.head[at] as string])
  return {
    noun: form.noun,
    rows: table.rows.map((row) => rowOf(row, table.head.length, uses, columns)),
    keyedBy: uses.some(({ key }) => key === CODE_COLUMN) ? 'code' : 'id',
    heads: new Map(heads),
  }
}

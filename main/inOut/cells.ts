import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { ColumnUse } from '../contract/inOut.ts'
import { readFigure } from '../contract/typedFigure.ts'
import type { Column, Holds } from './columns.ts'
import { guarded } from './csv.ts'

/** A reference that a table names by the code, and looked up once every row has its own. */
export interface Named {
  readonly words: string
}

/** @param codeOfId the code of a record by its id. @returns what a cell of a table says of a value */
export const writeCell = ({ holds }: Column, value: unknown, codeOfId: (id: string) => string): string => {
  if (value === null || value === undefined) return ''
  if (holds.kind === 'figure') return String(value)
  if (holds.kind === 'record') return codeOfId(String(value))
  return guarded(holds.kind === 'parts' ? JSON.stringify(value) : String(value))
}

/** A figure as programs write it; it is taken to the last digit, while one that is typed is rounded to what a hand means. */
const WRITTEN = /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/

type FigureHolds = Extract<Holds, { kind: 'figure' }>

const figureOf = (cell: string, { unit }: FigureHolds, lengthUnit: ColumnUse['lengthUnit']): Result<number> =>
  WRITTEN.test(cell) && (unit !== 'mm' || lengthUnit === 'mm') ? ok(Number(cell)) : readFigure(cell, unit, lengthUnit)

const DAY = /^\d{4}-\d\d-\d\d$/

const partsOf = (cell: string): Result<unknown> => {
  try {
    return ok(JSON.parse(cell) as unknown)
  } catch {
    return failed(problem('cellNotParts'))
  }
}

/** Words for the options of a choice, folded, to the option. */
export type ChoiceWords = ReadonlyMap<string, string>

/** Letters as they are compared: no capitals, no accents, no doubled spaces. */
export const folded = (text: string): string =>
  text.normalize('NFKD').replace(/\p{M}/gu, '').replace(/\s+/g, ' ').trim().toLowerCase()

/** Nothing in a cell: null where the entry may hold nothing, no words where it holds words, else not said at all. */
const emptyOf = ({ nullable, holds }: Column): Result<unknown> => {
  if (nullable) return ok(null)
  return ok(holds.kind === 'words' ? '' : undefined)
}

/** @returns what a cell says, undefined for nothing; or why it cannot be read. The schema judges it afterwards. */
export const readCell = (
  column: Column,
  cell: string,
  lengthUnit: ColumnUse['lengthUnit'],
  choices: ChoiceWords,
): Result<unknown> => {
  const { holds } = column
  const text = cell.trim()
  if (text === '') return emptyOf(column)
  if (holds.kind === 'figure') return figureOf(text, holds, lengthUnit)
  if (holds.kind === 'choice') return ok(choices.get(folded(text)) ?? text)
  if (holds.kind === 'record') return ok({ words: text } satisfies Named)
  if (holds.kind === 'parts') return partsOf(text)
  // A day alone is the noon of it, which is the same day in every place where people grind.
  if (holds.kind === 'moment' && DAY.test(text)) return ok(`${text}T12:00:00.000Z`)
  return ok(cell)
}

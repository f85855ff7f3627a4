import type { Unit } from '../../geometry/quantities.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { MM_PER_INCH, MM_PER_THOU } from '../../geometry/units.ts'
import type { Settings } from '../../main/contract/entities.ts'
import { figure, joined } from '../../main/contract/figures.ts'
import { readFigure } from '../../main/contract/typedFigure.ts'

/** What a field needs to know of its quantity. */
export interface FieldQuantity {
  readonly unit: Unit
  readonly min: number
  readonly max: number
  readonly decimals: number
}

type LengthUnit = Settings['lengthUnit']

/** Decimals beyond the table's that a typed figure may keep in its field. */
const EXTRA_DECIMALS = 2
/** Two figures this near are the same figure written twice (in the quantity's unit). */
const SAME = 1e-9

/**
 * What stands in the field at rest: the figure with the table's decimals, or with more where it was typed so and they
 * are exact; a figure that was found never shows its dust.
 */
export const restText = (value: number | null, quantity: FieldQuantity, lengthUnit: LengthUnit): string => {
  if (value === null) return ''
  const { unit, decimals } = quantity
  const texts = Array.from(
    { length: EXTRA_DECIMALS + 1 },
    (_, more) => figure(value, unit, decimals + more, lengthUnit).text,
  )
  const exact = texts.find((text) => {
    const read = readFigure(text, unit, lengthUnit)
    return read.ok && Math.abs(read.value - value) < SAME
  })
  return exact ?? (texts[0] as string)
}

/** What is counted comes whole: half a stroke is a slip of the pen. */
const COUNTED: readonly Unit[] = ['count', 'sweep']

/** @returns the value typed, within the quantity's range; null for an empty field that may be empty */
export const readField = (
  typed: string,
  quantity: FieldQuantity,
  lengthUnit: LengthUnit,
  allowEmpty: boolean,
): Result<number | null> => {
  if (allowEmpty && typed.trim() === '') return ok(null)
  const read = readFigure(typed, quantity.unit, lengthUnit)
  if (!read.ok) return read
  if (COUNTED.includes(quantity.unit) && !Number.isInteger(read.value)) return failed(problem('notWhole'))
  const limit = (value: number) => joined(figure(value, quantity.unit, limitDecimals(value, quantity), lengthUnit))
  if (read.value < quantity.min) return failed(problem('figureTooSmall', '', { least: limit(quantity.min) }))
  if (read.value > quantity.max) return failed(problem('figureTooLarge', '', { most: limit(quantity.max) }))
  return read
}

/** Most decimals that a limit of the table is written with. */
const LIMIT_DECIMALS = 3

const limitDecimals = (value: number, { decimals }: FieldQuantity): number => {
  const needed = [0, 1, 2, LIMIT_DECIMALS].find((count) => Number(value.toFixed(count)) === value)
  return Math.max(needed ?? LIMIT_DECIMALS, Number.isInteger(value) ? 0 : decimals)
}

/** One step of an arrow key, in the quantity's unit: the last digit that the field shows. */
export const stepOf = ({ unit, decimals }: FieldQuantity, lengthUnit: LengthUnit): number => {
  if (unit !== 'mm' || lengthUnit === 'mm') return 10 ** -decimals
  return lengthUnit === 'inch' ? MM_PER_INCH * 10 ** -(decimals + 2) : MM_PER_THOU * 10 ** -Math.max(0, decimals - 1)
}

/** @returns the text after stepping from what stands there; unreadable text stays as it is */
export const stepped = (typed: string, steps: number, quantity: FieldQuantity, lengthUnit: LengthUnit): string => {
  const read = readFigure(typed, quantity.unit, lengthUnit)
  if (!read.ok) return typed
  const next = read.value + steps * stepOf(quantity, lengthUnit)
  return restText(Math.min(quantity.max, Math.max(quantity.min, next)), quantity, lengthUnit)
}

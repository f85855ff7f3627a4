import type { Unit } from '../../geometry/quantities.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { MM_PER_INCH, MM_PER_THOU } from '../../geometry/units.ts'
import type { Settings } from './entities.ts'

/**
 * Reads a figure as a person types it: `57`, `57 mm`, `2 1/4 in`, `2-1/4"`, `20 thou`, `0,5`, `1.5 turns`, `25°`, `24°30'`.
 * Comma and point are always the decimal mark; figures grouped in thousands are refused, because `1,250` cannot mean
 * two things at the wheel. What cannot be read is a problem in place, never a guess.
 */
type LengthUnit = Settings['lengthUnit']

const words = (factor: number, ...names: readonly string[]): Record<string, number> =>
  Object.fromEntries(names.map((name) => [name, factor]))

/** Words that may follow a figure, in any of the program's languages, by what they measure, each with its factor into the program's own unit. */
const unitWords: Record<Unit, Record<string, number>> = {
  mm: {
    ...words(1, 'mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'),
    ...words(10, 'cm'),
    ...words(0.001, 'µm', 'μm', 'um'),
    ...words(MM_PER_INCH, 'in', 'in.', 'inch', 'inches', 'zoll', '"', '″', '”', "''"),
    ...words(MM_PER_THOU, 'thou'),
  },
  deg: words(1, '°', 'º', 'deg', 'degree', 'degrees', 'grad'),
  turn: words(1, 'turn', 'turns', 'umdrehung', 'umdrehungen'),
  rpm: words(1, 'rpm', '/min', 'u/min', 'turns a minute'),
  mPerS: words(1, 'm/s'),
  min: { ...words(1, 'min', 'minute', 'minutes', 'minuten'), ...words(1 / 60, 's', 'second', 'seconds', 'sekunden') },
  N: words(1, 'n', 'newton', 'newtons'),
  mm2: words(1, 'mm²', 'mm2'),
  mm3: words(1, 'mm³', 'mm3'),
  nPerMm3: words(1, 'n/mm³', 'n/mm3'),
  sweep: words(1, 'sweep', 'sweeps', 'zug', 'züge'),
  share: words(0.01, '%'),
  ratio: {},
  count: {},
  px: words(1, 'px', 'pixel', 'pixels'),
  perS: words(1, '/s', 'a second'),
  degC: words(1, '°c', 'c'),
  day: words(1, 'day', 'days', 'tag', 'tage'),
  MB: { ...words(1, 'mb', 'megabyte', 'megabytes'), ...words(1000, 'gb', 'gigabyte', 'gigabytes') },
}

const bareFactor: Record<LengthUnit, number> = { mm: 1, inch: MM_PER_INCH, thou: MM_PER_THOU }

/** Fractions that keyboards and word processors put in one character. */
const fractionSigns: Record<string, string> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

const plain = (text: string): string =>
  text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${fractionSigns[sign]}`)
    .replace(/[−–]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/\s+/g, ' ')
    .trim()

interface Magnitude {
  readonly value: number
  readonly rest: string
}

const MIXED = /^(\d+)[ -](\d+)\/(\d+)/
const FRACTION = /^(\d+)\/(\d+)/
const DECIMAL = /^(\d+(?:[.,]\d*)?|[.,]\d+)/

const mixed = (text: string): Magnitude | null => {
  const found = MIXED.exec(text)
  if (!found) return null
  const [all, whole, over, under] = found
  if (Number(over) >= Number(under)) return null
  return { value: Number(whole) + Number(over) / Number(under), rest: text.slice(all.length) }
}

const fraction = (text: string): Magnitude | null => {
  const found = FRACTION.exec(text)
  if (!found || Number(found[2]) === 0) return null
  return { value: Number(found[1]) / Number(found[2]), rest: text.slice(found[0].length) }
}

const decimal = (text: string): Magnitude | null => {
  const found = DECIMAL.exec(text)
  if (!found?.[1]) return null
  return { value: Number(found[1].replace(',', '.')), rest: text.slice(found[0].length) }
}

const SEXAGESIMAL = /^(\d+) ?[°º] ?(\d+(?:[.,]\d*)?) ?['′’](?: ?(\d+(?:[.,]\d*)?) ?["″”])?$/
const SIXTY = 60

/** Degrees, minutes and seconds as degrees; null for anything else, sixty minutes included. */
const sexagesimal = (text: string): number | null => {
  const [, degrees, ...parts] = SEXAGESIMAL.exec(text) ?? []
  const [minutes, seconds] = parts.map((part) => Number((part ?? '0').replace(',', '.'))) as [number, number]
  if (degrees === undefined || minutes >= SIXTY || seconds >= SIXTY) return null
  return Number(degrees) + minutes / SIXTY + seconds / (SIXTY * SIXTY)
}

/** Digits after which more digits follow across a mark: thousands, or two figures in one field. */
const GROUPED = /^[+-]?\d+(?:[.,'’ ]\d+)+/

/** Floating-point dust from a factor is not what was typed: twelve digits are a picometre on a metre. */
const tidy = (value: number): number => Number(value.toPrecision(12))

const factorOf = (word: string, unit: Unit, lengthUnit: LengthUnit): number | undefined => {
  if (word === '') return unit === 'mm' ? bareFactor[lengthUnit] : 1
  return Object.hasOwn(unitWords[unit], word) ? unitWords[unit][word] : undefined
}

const refusal = (text: string, word: string): Result<number> => {
  if (Object.values(unitWords).some((known) => Object.hasOwn(known, word))) {
    return failed(problem('figureWrongUnit', '', { word }))
  }
  return failed(problem(GROUPED.test(text) ? 'figureGrouped' : 'figureUnreadable', '', { text }))
}

/**
 * @param typed what stands in the field
 * @param unit of the quantity; the answer is in it (mm for lengths, degrees for angles)
 * @param lengthUnit what a length without a unit is in
 * @returns the figure, or `missing`, `figureUnreadable`, `figureGrouped`, `figureWrongUnit`
 */
export const readFigure = (typed: string, unit: Unit, lengthUnit: LengthUnit): Result<number> => {
  const text = plain(typed)
  if (text === '') return failed(problem('missing'))
  const sign = text.startsWith('-') ? -1 : 1
  const unsigned = text.replace(/^[+-] ?/, '')
  const angle = unit === 'deg' ? sexagesimal(unsigned) : null
  if (angle !== null) return ok(tidy(sign * angle))
  const magnitude = mixed(unsigned) ?? fraction(unsigned) ?? decimal(unsigned)
  if (!magnitude) return refusal(text, '?')
  const word = magnitude.rest.trim().toLowerCase()
  const factor = factorOf(word, unit, lengthUnit)
  if (factor === undefined) return refusal(text, word)
  return ok(tidy(sign * magnitude.value * factor))
}

import german from '../../assets/texts/de/units.json' with { type: 'json' }
import english from '../../assets/texts/en/units.json' with { type: 'json' }
import type { Unit } from '../../geometry/quantities.ts'
import { MM_PER_INCH, MM_PER_THOU } from '../../geometry/units.ts'
import type { Settings } from './entities.ts'
import { direction, type Language, language } from './language.ts'

/** A figure as shown: number and unit apart, since the unit is set smaller. */
export interface Figure {
  readonly text: string
  readonly unit: string
}

/** @returns the figure as one piece, which words read from right to left do not take apart */
const isolated = (text: string): string => (direction() === 'rtl' ? `\u2066${text}\u2069` : text)

/** @returns one string, figure and unit parted by a space that does not break */
export const joined = ({ text, unit }: Figure): string => isolated(unit === '' ? text : `${text}\u00a0${unit}`)

/** How each language writes figures and the units that are words; so few that all of them are there from the first. */
const written: Readonly<Record<Language, typeof english>> = { en: english, de: german }

const words = (): typeof english => written[language()]

/** Symbols that every language shares; a degree sign closes up to its figure, so it is part of `text`. */
const symbols: Record<Exclude<Unit, 'turn' | 'rpm' | 'sweep' | 'day'>, string> = {
  mm: 'mm',
  deg: '',
  mPerS: 'm/s',
  min: 'min',
  N: 'N',
  mm2: 'mm²',
  mm3: 'mm³',
  nPerMm3: 'N/mm³',
  share: '',
  ratio: '',
  count: '',
  px: 'px',
  perS: '/s',
  degC: '°C',
  MB: 'MB',
}

/** Inches show two decimals more than millimetres, thou two fewer and never less than none: the same fineness within a digit. */
const lengthFigure = (mm: number, decimals: number, lengthUnit: Settings['lengthUnit']): Figure => {
  if (lengthUnit === 'inch') return { text: fixed(mm / MM_PER_INCH, decimals + 2), unit: words().inch }
  if (lengthUnit === 'thou') return { text: fixed(mm / MM_PER_THOU, Math.max(0, decimals - 1)), unit: 'thou' }
  return { text: fixed(mm, decimals), unit: 'mm' }
}

/** Fixed decimals with the language's mark, a true minus sign, and no minus before a zero. */
export const fixed = (value: number, decimals: number): string => {
  const text = Math.abs(value).toFixed(decimals)
  return withMark(value < 0 && Number(text) !== 0 ? `−${text}` : text)
}

const withMark = (text: string): string => text.replace('.', words().decimalMark)

/** As many decimals as the figure has. */
export const plainly = (value: number): string => withMark(String(value))

/** @param text a figure as this program writes it, without its unit */
export const readBack = (text: string): number => Number(text.replace(words().decimalMark, '.'))

/** Turns are counted by hand: 2 turns, 1.85 turns, 1 turn, 0.5 turn. */
const turnFigure = (value: number, decimals: number): Figure => {
  const turns = Number(value.toFixed(decimals))
  return { text: withMark(String(Math.abs(turns))), unit: turns > 0 && turns <= 1 ? words().turnOne : words().turn }
}

/**
 * @param value in `unit`: lengths in mm, angles in degrees
 * @param decimals as the quantity table says, in that unit
 * @param lengthUnit what the workshop reads lengths in
 */
export const figure = (
  value: number,
  unit: Unit,
  decimals: number,
  lengthUnit: Settings['lengthUnit'] = 'mm',
): Figure => {
  if (unit === 'mm') return lengthFigure(value, decimals, lengthUnit)
  if (unit === 'turn') return turnFigure(value, decimals)
  const symbol = unit in symbols ? symbols[unit as keyof typeof symbols] : words()[unit as 'rpm' | 'sweep' | 'day']
  return { text: fixed(value, decimals) + (unit === 'deg' ? '°' : ''), unit: symbol }
}

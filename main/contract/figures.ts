import type { Unit } from '../../geometry/quantities.ts'
import { MM_PER_INCH, MM_PER_THOU } from '../../geometry/units.ts'
import type { Settings } from './entities.ts'

/** A figure as shown: number and unit apart, since the unit is set smaller. */
export interface Figure {
  readonly text: string
  readonly unit: string
}

/** @returns one string, figure and unit parted by a space that does not break */
export const joined = ({ text, unit }: Figure): string => (unit === '' ? text : `${text}\u00a0${unit}`)

/** Symbols of the units; a degree sign closes up to its figure, so it is part of `text`. */
const symbols: Record<Unit, string> = {
  mm: 'mm',
  deg: '',
  turn: 'turns',
  rpm: 'rpm',
  mPerS: 'm/s',
  min: 'min',
  N: 'N',
  mm2: 'mm²',
  mm3: 'mm³',
  nPerMm3: 'N/mm³',
  sweep: 'sweeps',
  share: '',
  ratio: '',
  count: '',
  px: 'px',
  perS: '/s',
  degC: '°C',
  MB: 'MB',
  day: 'days',
}

/** Inches show two decimals more than millimetres, thou two fewer and never less than none: the same fineness within a digit. */
const lengthFigure = (mm: number, decimals: number, lengthUnit: Settings['lengthUnit']): Figure => {
  if (lengthUnit === 'inch') return { text: fixed(mm / MM_PER_INCH, decimals + 2), unit: 'in' }
  if (lengthUnit === 'thou') return { text: fixed(mm / MM_PER_THOU, Math.max(0, decimals - 1)), unit: 'thou' }
  return { text: fixed(mm, decimals), unit: 'mm' }
}

/** Fixed decimals with a true minus sign, and no minus before a zero. */
const fixed = (value: number, decimals: number): string => {
  const text = Math.abs(value).toFixed(decimals)
  return value < 0 && Number(text) !== 0 ? `−${text}` : text
}

/** Turns are counted by hand: 2 turns, 1.85 turns, 1 turn, 0.5 turn. */
const turnFigure = (value: number, decimals: number): Figure => {
  const turns = Number(value.toFixed(decimals))
  return { text: String(Math.abs(turns)), unit: turns > 0 && turns <= 1 ? 'turn' : symbols.turn }
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
  return { text: fixed(value, decimals) + (unit === 'deg' ? '°' : ''), unit: symbols[unit] }
}

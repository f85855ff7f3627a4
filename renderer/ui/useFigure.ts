import { type QuantityPath, quantityAt, type Unit } from '../../geometry/quantities.ts'
import type { Settings } from '../../main/contract/entities.ts'
import { type Figure, figure, joined } from '../../main/contract/figures.ts'
import { useApp } from '../app/store.ts'

/** Writes figures in the workshop's unit. */
export interface Figures {
  readonly lengthUnit: Settings['lengthUnit']
  /** By the quantity table: unit and decimals from there. */
  of(path: QuantityPath, value: number): Figure
  /** For figures that are found and stand in no table. */
  plain(value: number, unit: Unit, decimals: number): Figure
  /** As `plain`, in one string for a sentence. */
  inWords(value: number, unit: Unit, decimals: number): string
}

/** @returns the writer for one unit; pure, so that it can be tested without a window */
export const figuresIn = (lengthUnit: Settings['lengthUnit']): Figures => ({
  lengthUnit,
  of: (path, value) => figure(value, quantityAt(path).unit, quantityAt(path).decimals, lengthUnit),
  plain: (value, unit, decimals) => figure(value, unit, decimals, lengthUnit),
  inWords: (value, unit, decimals) => joined(figure(value, unit, decimals, lengthUnit)),
})

const writers = { mm: figuresIn('mm'), inch: figuresIn('inch'), thou: figuresIn('thou') }

/** @returns the writer for the unit the workshop reads lengths in */
export const useFigures = (): Figures => writers[useApp((app) => app.settings.lengthUnit)]

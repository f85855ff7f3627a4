import type { TFunction } from 'i18next'
import { type Quantity, quantities } from '../../geometry/quantities.ts'
import type { Settings } from '../../main/contract/entities.ts'
import { figure, joined } from '../../main/contract/figures.ts'
import type { Entry } from './entry.ts'

/** A limit is written whole, even where figures between the limits deserve fewer decimals. */
const decimalsOf = (value: number, { decimals }: Quantity): number =>
  Math.max(decimals, String(value).split('.')[1]?.length ?? 0)

/** @returns the range and what stands without a figure, in the unit that the workshop reads lengths in */
const factsOf = (t: TFunction, quantity: Quantity, lengthUnit: Settings['lengthUnit']): readonly string[] => {
  const { unit, min, max, defaultValue } = quantity
  const written = (value: number): string => joined(figure(value, unit, decimalsOf(value, quantity), lengthUnit))
  const named = unit === 'mm' ? lengthUnit : unit
  return [
    t('help:range.unit', { unit: t(`quantities:units.${named}`) }),
    t('help:range.between', { min: written(min), max: written(max) }),
    defaultValue === null ? t('help:range.none') : t('help:range.without', { value: written(defaultValue) }),
  ]
}

/** Every figure of the table, as it is named on the screens. */
export const quantityEntries = (t: TFunction, lengthUnit: Settings['lengthUnit']): readonly Entry[] =>
  Object.entries(quantities).flatMap(([section, ofSection]) =>
    Object.entries(ofSection).map(
      ([key, quantity]): Entry => ({
        page: 'quantities',
        id: `quantities.${section}.${key}`,
        title: t(`quantities:${section}.${key}.name`),
        group: t(`help:section.${section}`),
        lines: [t(`quantities:${section}.${key}.sentence`)],
        facts: factsOf(t, quantity, lengthUnit),
      }),
    ),
  )

import type { TFunction } from 'i18next'
import type { Change } from '../../../main/contract/entities.ts'
import type { Place } from '../../../main/contract/people.ts'
import type { FieldSpec } from '../../ui/fieldSpec.ts'
import type { Figures } from '../../ui/useFigure.ts'
import { ownFieldFields, personFields, placeFields, purposeFields } from '../belonging/fields.ts'
import { fixtureFields, stationFields, toolFields } from '../drafts.ts'

type AnyField = FieldSpec<Record<string, unknown>>

/** The fields of each noun that has a form. */
const forms = (places: readonly Place[]): Partial<Record<Change['noun'], readonly AnyField[]>> => ({
  tool: toolFields(places) as unknown as readonly AnyField[],
  station: stationFields as unknown as readonly AnyField[],
  fixture: fixtureFields as unknown as readonly AnyField[],
  place: placeFields(places, places) as unknown as readonly AnyField[],
  person: personFields as unknown as readonly AnyField[],
  purpose: purposeFields as unknown as readonly AnyField[],
  ownField: ownFieldFields as unknown as readonly AnyField[],
})

type Cell = Change['fields'][number]['before']

const cellInWords = (t: TFunction, figures: Figures, field: AnyField, cell: Cell): string => {
  if (cell === null || cell === '') return t('history:nothing')
  if (field.kind === 'choice') return t(`${field.texts}.${cell}`)
  if (field.kind === 'words' || field.kind === 'note' || field.kind === 'made') return String(cell)
  if (field.kind === 'pick') return field.options.find(({ value }) => value === cell)?.name ?? t('history:nothing')
  const { text, unit } = figures.of(field.quantity, Number(cell))
  return `${text} ${unit}`.trim()
}

/** One field of a change, named as on its form. */
export interface FieldWords {
  readonly name: string
  readonly before: string
  readonly after: string
}

/** @returns the changed fields that have a place on a form, in words with units */
export const fieldsInWords = (
  t: TFunction,
  figures: Figures,
  places: readonly Place[],
  { noun, fields }: Change,
): readonly FieldWords[] => {
  const form = forms(places)[noun] ?? []
  return fields.flatMap(({ key, before, after }) => {
    const field = form.find((each) => each.key === key)
    if (!field) return []
    const words = (cell: Cell) => cellInWords(t, figures, field, cell)
    return [{ name: t(`rack:field.${key}`), before: words(before), after: words(after) }]
  })
}

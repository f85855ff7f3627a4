import type { CallInput } from '../../../main/contract/calls.ts'
import { ownFieldKinds } from '../../../main/contract/extras.ts'
import type { Place } from '../../../main/contract/people.ts'
import { placePath } from '../../../main/contract/placePath.ts'
import type { FieldSpec } from '../../ui/fieldSpec.ts'

/** Fields of a place. @param places those that it may stand in */
export const placeFields = (
  places: readonly Place[],
  all: readonly Place[],
): readonly FieldSpec<CallInput<'place.add'>>[] => [
  { kind: 'words', key: 'name', required: true },
  { kind: 'pick', key: 'parentId', options: places.map(({ id }) => ({ value: id, name: placePath(all, id) })) },
  { kind: 'note', key: 'note' },
]

/** Fields of somebody: a name, and whether he or she is an apprentice. Nothing more is kept. */
export const personFields: readonly FieldSpec<CallInput<'person.add'>>[] = [
  { kind: 'words', key: 'name', required: true },
  { kind: 'choice', key: 'apprentice', options: ['no', 'yes'], texts: 'rack:person.isApprentice' },
]

/** Fields of a purpose. */
export const purposeFields: readonly FieldSpec<CallInput<'purpose.add'>>[] = [
  { kind: 'words', key: 'name', required: true },
  { kind: 'note', key: 'note' },
]

/** Plain fields of a field that the workshop adds; its choices are a list of their own. */
export const ownFieldFields: readonly FieldSpec<CallInput<'ownField.add'>>[] = [
  { kind: 'words', key: 'name', required: true },
  { kind: 'choice', key: 'kind', options: ownFieldKinds, texts: 'rack:ownField.kindIs' },
  { kind: 'words', key: 'unit' },
]

import type { CallInput } from '../../../main/contract/calls.ts'
import type { Place } from '../../../main/contract/people.ts'
import { sayProblem, useApp } from '../../app/store.ts'
import { removeRecord, savePlace } from '../../app/storeRack.ts'
import { type FieldSpec, RecordForm } from '../../ui/RecordForm.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { openLabels } from '../labels/useLabels.ts'
import { placePath } from '../placePath.ts'

type PlaceDraft = CallInput<'place.add'>

interface PlaceSheetProps {
  /** Null: a new one. */
  readonly place: Place | null
  readonly onClose: () => void
}

/** A place: what it is called, and which place it stands in. */
export const PlaceSheet = ({ place, onClose }: PlaceSheetProps) => {
  const t = useTexts()
  const places = useApp((app) => app.places)
  const others = places.filter(({ id }) => id !== place?.id)
  const fields: readonly FieldSpec<PlaceDraft>[] = [
    { kind: 'words', key: 'name', required: true },
    {
      kind: 'pick',
      key: 'parentId',
      options: others.map(({ id }) => ({ value: id, name: placePath(places, id) })),
    },
    { kind: 'words', key: 'note' },
  ]
  const remove = async (record: Place) => {
    const removed = await removeRecord('place', record)
    if (removed.ok) onClose()
    else if (removed.problems[0]) sayProblem(removed.problems[0])
  }
  return (
    <Sheet title={place ? t('rack:sheet.edit', { name: place.name }) : t('rack:place.add')} onClose={onClose}>
      <RecordForm<PlaceDraft>
        texts="rack:field"
        fields={fields}
        start={{ name: place?.name, parentId: place?.parentId ?? null, note: place?.note ?? '' }}
        saveLabel={t('rack:sheet.save')}
        onSave={(draft) => savePlace(place, draft)}
        onDone={onClose}
      />
      {place && (
        <p>
          <button type="button" className="word" onClick={() => void remove(place)}>
            {t('rack:remove')}
          </button>
          <button
            type="button"
            className="word"
            onClick={() => {
              onClose()
              openLabels([{ noun: 'place', id: place.id }])
            }}
          >
            {t('labels:openOne')}
          </button>
        </p>
      )}
    </Sheet>
  )
}

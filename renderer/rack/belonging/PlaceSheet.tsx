import type { CallInput } from '../../../main/contract/calls.ts'
import type { Place } from '../../../main/contract/people.ts'
import { useApp } from '../../app/store.ts'
import { RecordForm } from '../../ui/RecordForm.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { saveRecord } from '../edits.ts'
import { RecordKeys } from '../RecordKeys.tsx'
import { placeFields } from './fields.ts'

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
  return (
    <Sheet title={place ? t('rack:sheet.edit', { name: place.name }) : t('rack:place.add')} onClose={onClose}>
      <RecordForm<PlaceDraft>
        texts="rack:field"
        fields={placeFields(others, places)}
        start={{ name: place?.name, parentId: place?.parentId ?? null, note: place?.note ?? '' }}
        saveLabel={t('rack:sheet.save')}
        onSave={(draft) => saveRecord('place', place, draft)}
        onDone={onClose}
      />
      {place && <RecordKeys noun="place" record={place} onClose={onClose} />}
    </Sheet>
  )
}

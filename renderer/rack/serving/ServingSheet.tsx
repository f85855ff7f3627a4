import { useState } from 'react'
import type { FixtureDraft, Station, StationDraft } from '../../../main/contract/entities.ts'
import { useApp } from '../../app/store.ts'
import { RecordForm } from '../../ui/RecordForm.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { fixtureDraftOf, fixtureFields, newFixture, newStation, stationDraftOf, stationFields } from '../drafts.ts'
import { saveRecord } from '../edits.ts'
import { RecordKeys } from '../RecordKeys.tsx'
import { DressingsSheet } from '../sheets.tsx'
import type { OpenedServing } from './servingSheet.ts'

interface ServingSheetProps {
  readonly opened: OpenedServing
  readonly onClose: () => void
}

/** A station or a fixture, to fill in or to mend. */
export const ServingSheet = ({ opened, onClose }: ServingSheetProps) => {
  const t = useTexts()
  const { noun, record } = opened
  const [dressings, setDressings] = useState(false)
  const station = useApp((app) => app.stations.find(({ id }) => id === record?.id))
  if (dressings && station) return <DressingsSheet station={station} onClose={onClose} />
  const seen = record && { id: record.id, version: record.version }
  const title = record ? t('rack:sheet.edit', { name: record.name }) : t(`rack:${noun}.add`)
  const shared = { texts: 'rack:field', saveLabel: t('rack:sheet.save'), onDone: onClose }
  return (
    <Sheet title={title} onClose={onClose}>
      {opened.noun === 'station' ? (
        <RecordForm<StationDraft>
          {...shared}
          fields={stationFields}
          start={opened.record ? stationDraftOf(opened.record) : newStation}
          onSave={(draft) => saveRecord('station', seen, asMeasured(opened.record, draft))}
        />
      ) : (
        <RecordForm<FixtureDraft>
          {...shared}
          fields={fixtureFields}
          start={opened.record ? fixtureDraftOf(opened.record) : newFixture}
          onSave={(draft) => saveRecord('fixture', seen, draft)}
        />
      )}
      {opened.noun === 'station' && opened.record && (
        <button type="button" className="word" onClick={() => setDressings(true)}>
          {t('dressing:open')}
        </button>
      )}
      {record && <RecordKeys noun={noun} record={record} onClose={onClose} />}
    </Sheet>
  )
}

/** A diameter that was typed was measured now; one left as it was keeps its date. */
const asMeasured = (before: Station | null, draft: StationDraft): StationDraft => ({
  ...draft,
  measuredAt: before?.wheelDiameterMm === draft.wheelDiameterMm ? before.measuredAt : new Date().toISOString(),
})

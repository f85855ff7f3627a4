import type { FixtureDraft, Station, StationDraft } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { saveRecord } from '../app/storeRack.ts'
import { shortDate } from '../ui/dates.ts'
import { RecordForm } from '../ui/RecordForm.tsx'
import { Sheet } from '../ui/Sheet.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { fixtureDraftOf, fixtureFields, newFixture, newStation, stationDraftOf, stationFields } from './drafts.ts'
import { type OpenedPlace, showPlace, usePlaceSheet } from './placeSheet.ts'
import { RecordKeys } from './RecordKeys.tsx'
import { RecordList } from './RecordList.tsx'

/** The stations and fixtures that serve the tools: short lists under the rack. */
export const Places = () => {
  const stations = useApp((app) => app.stations)
  const fixtures = useApp((app) => app.fixtures)
  const opened = usePlaceSheet((sheet) => sheet.opened)
  const figures = useFigures()
  const t = useTexts()
  const wheel = ({ wheelDiameterMm, measuredAt }: Station) =>
    t('rack:station.line', {
      diameter: figures.inWords(wheelDiameterMm, 'mm', 1),
      date: shortDate(measuredAt),
    })
  return (
    <div className="places">
      <RecordList
        noun="station"
        lines={stations.map((record) => ({ record, name: record.name, words: wheel(record) }))}
        onOpen={(record) => showPlace({ noun: 'station', record })}
      />
      <RecordList
        noun="fixture"
        lines={fixtures.map((record) => ({
          record,
          name: record.name,
          words: t(`common:fixtureKind.${record.kind}`),
        }))}
        onOpen={(record) => showPlace({ noun: 'fixture', record })}
      />
      {opened && <PlaceSheet opened={opened} onClose={() => showPlace(null)} />}
    </div>
  )
}

const PlaceSheet = ({ opened, onClose }: { readonly opened: OpenedPlace; readonly onClose: () => void }) => {
  const t = useTexts()
  const { noun, record } = opened
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
      {record && <RecordKeys noun={noun} record={record} onClose={onClose} />}
    </Sheet>
  )
}

/** A diameter that was typed was measured now; one left as it was keeps its date. */
const asMeasured = (before: Station | null, draft: StationDraft): StationDraft => ({
  ...draft,
  measuredAt: before?.wheelDiameterMm === draft.wheelDiameterMm ? before.measuredAt : new Date().toISOString(),
})

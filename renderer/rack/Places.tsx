import type { Fixture, FixtureDraft, Station, StationDraft } from '../../main/contract/entities.ts'
import { sayProblem, useApp } from '../app/store.ts'
import { removePlace, saveFixture, saveStation } from '../app/storeRack.ts'
import { shortDate } from '../ui/dates.ts'
import { RecordForm } from '../ui/RecordForm.tsx'
import { Sheet } from '../ui/Sheet.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { fixtureDraftOf, fixtureFields, newFixture, newStation, stationDraftOf, stationFields } from './drafts.ts'
import { openLabels } from './labels/useLabels.ts'
import { type OpenedPlace, showPlace, usePlaceSheet } from './placeSheet.ts'

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
      <PlaceList
        noun="station"
        lines={stations.map((record) => ({ record, words: wheel(record) }))}
        onOpen={(record) => showPlace({ noun: 'station', record })}
      />
      <PlaceList
        noun="fixture"
        lines={fixtures.map((record) => ({ record, words: t(`common:fixtureKind.${record.kind}`) }))}
        onOpen={(record) => showPlace({ noun: 'fixture', record })}
      />
      {opened && <PlaceSheet opened={opened} onClose={() => showPlace(null)} />}
    </div>
  )
}

interface PlaceListProps<R> {
  readonly noun: 'station' | 'fixture'
  readonly lines: readonly { readonly record: R; readonly words: string }[]
  readonly onOpen: (record: R | null) => void
}

const PlaceList = <R extends Station | Fixture>({ noun, lines, onOpen }: PlaceListProps<R>) => {
  const t = useTexts()
  return (
    <section aria-label={t(`rack:${noun}.heading`)}>
      <h2>{t(`rack:${noun}.heading`)}</h2>
      <ul>
        {lines.map(({ record, words }) => (
          <li key={record.id}>
            <button type="button" className="word" onClick={() => onOpen(record)}>
              {record.code} <strong>{record.name}</strong>
            </button>
            <span className="muted">{words}</span>
          </li>
        ))}
      </ul>
      <button type="button" className="word" onClick={() => onOpen(null)}>
        {t(`rack:${noun}.add`)}
      </button>
    </section>
  )
}

const PlaceSheet = ({ opened, onClose }: { readonly opened: OpenedPlace; readonly onClose: () => void }) => {
  const t = useTexts()
  const { noun, record } = opened
  const seen = record && { id: record.id, version: record.version }
  const title = record ? t('rack:sheet.edit', { name: record.name }) : t(`rack:${noun}.add`)
  const shared = { texts: 'rack:field', saveLabel: t('rack:sheet.save'), onDone: onClose }
  const remove = async () => {
    if (!record) return
    const removed = await removePlace(noun, record, record.name)
    if (removed.ok) onClose()
    else if (removed.problems[0]) sayProblem(removed.problems[0])
  }
  return (
    <Sheet title={title} onClose={onClose}>
      {opened.noun === 'station' ? (
        <RecordForm<StationDraft>
          {...shared}
          fields={stationFields}
          start={opened.record ? stationDraftOf(opened.record) : newStation}
          onSave={(draft) => saveStation(seen, asMeasured(opened.record, draft))}
        />
      ) : (
        <RecordForm<FixtureDraft>
          {...shared}
          fields={fixtureFields}
          start={opened.record ? fixtureDraftOf(opened.record) : newFixture}
          onSave={(draft) => saveFixture(seen, draft)}
        />
      )}
      {record && (
        <p>
          <button type="button" className="word" onClick={() => void remove()}>
            {t('rack:remove')}
          </button>
          <button type="button" className="word" onClick={() => labelOf(noun, record.id, onClose)}>
            {t('labels:openOne')}
          </button>
        </p>
      )}
    </Sheet>
  )
}

const labelOf = (noun: 'station' | 'fixture', id: string, onClose: () => void): void => {
  onClose()
  openLabels([{ noun, id }])
}

/** A diameter that was typed was measured now; one left as it was keeps its date. */
const asMeasured = (before: Station | null, draft: StationDraft): StationDraft => ({
  ...draft,
  measuredAt: before?.wheelDiameterMm === draft.wheelDiameterMm ? before.measuredAt : new Date().toISOString(),
})

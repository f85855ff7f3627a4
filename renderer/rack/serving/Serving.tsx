import type { Station } from '../../../main/contract/entities.ts'
import { useApp } from '../../app/store.ts'
import { shortDate } from '../../ui/dates.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { RecordList } from '../RecordList.tsx'
import { ServingSheet } from '../sheets.tsx'
import { showServing, useServingSheet } from './servingSheet.ts'

/** The stations and fixtures that serve the tools: short lists under the rack. */
export const Serving = () => {
  const stations = useApp((app) => app.stations)
  const fixtures = useApp((app) => app.fixtures)
  const opened = useServingSheet((sheet) => sheet.opened)
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
        onOpen={(record) => showServing({ noun: 'station', record })}
      />
      <RecordList
        noun="fixture"
        lines={fixtures.map((record) => ({
          record,
          name: record.name,
          words: t(`common:fixtureKind.${record.kind}`),
        }))}
        onOpen={(record) => showServing({ noun: 'fixture', record })}
      />
      {opened && <ServingSheet opened={opened} onClose={() => showServing(null)} />}
    </div>
  )
}

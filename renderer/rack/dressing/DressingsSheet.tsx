import { useState } from 'react'
import type { CallInput } from '../../../main/contract/calls.ts'
import type { Station } from '../../../main/contract/entities.ts'
import type { FieldSpec } from '../../ui/fieldSpec.ts'
import { RecordForm } from '../../ui/RecordForm.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { noteDressing } from '../edits.ts'
import { DressingLine } from './DressingLine.tsx'
import { useDressings } from './useDressings.ts'
import { WearDrawing } from './WearDrawing.tsx'
import './dressing.css'

type DressingDraft = CallInput<'dressing.add'>

const fields: readonly FieldSpec<DressingDraft>[] = [
  { kind: 'choice', key: 'kind', options: ['dressed', 'measured'], texts: 'dressing:kind' },
  { kind: 'figure', key: 'diameterMm', quantity: 'station.wheelDiameterMm' },
  { kind: 'figure', key: 'barMm', quantity: 'aim.barDistanceMm', allowEmpty: true },
  { kind: 'words', key: 'who' },
  { kind: 'note', key: 'note' },
]

interface DressingsSheetProps {
  readonly station: Station
  readonly onClose: () => void
}

/** A wheel over time: when it was dressed or measured, with the bar as it stood, and what is left of it. */
export const DressingsSheet = ({ station, onClose }: DressingsSheetProps) => {
  const t = useTexts()
  const dressings = useDressings(station.id)
  const [noted, setNoted] = useState(0)
  const start = {
    kind: 'dressed',
    diameterMm: station.wheelDiameterMm,
    barMm: null,
    who: dressings?.[0]?.who ?? '',
    note: '',
  }
  const note = (draft: DressingDraft) =>
    noteDressing(station, { ...draft, barMeasure: station.barMeasure, at: new Date().toISOString() })
  return (
    <Sheet title={t('dressing:title', { name: station.name })} onClose={onClose}>
      <Left station={station} />
      {dressings && dressings.length > 1 && <WearDrawing dressings={dressings} leastMm={station.leastDiameterMm} />}
      {dressings && (
        <RecordForm<DressingDraft>
          key={`${noted} ${station.version}`}
          texts="dressing:field"
          fields={fields}
          start={start}
          saveLabel={t('dressing:save')}
          onSave={note}
          onDone={() => setNoted((now) => now + 1)}
        />
      )}
      <p className="muted dressing-bar">{t('dressing:bar')}</p>
      {dressings?.length === 0 && <p className="muted">{t('dressing:none')}</p>}
      <ul className="dressings">
        {dressings?.map((dressing) => (
          <DressingLine key={dressing.id} dressing={dressing} station={station} />
        ))}
      </ul>
    </Sheet>
  )
}

/** What may still be worn away, where the machine's least wheel is known. */
const Left = ({ station: { wheelDiameterMm, leastDiameterMm } }: { readonly station: Station }) => {
  const t = useTexts()
  const figures = useFigures()
  const diameter = figures.inWords(wheelDiameterMm, 'mm', 1)
  if (leastDiameterMm === null) return <p>{t('dressing:today', { diameter })}</p>
  const least = figures.inWords(leastDiameterMm, 'mm', 1)
  if (wheelDiameterMm <= leastDiameterMm) return <p className="caution">{t('dressing:wornOut', { diameter, least })}</p>
  const left = figures.inWords(wheelDiameterMm - leastDiameterMm, 'mm', 1)
  return <p>{t('dressing:left', { diameter, least, left })}</p>
}

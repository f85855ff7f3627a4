import { useState } from 'react'
import type { DayQueue } from '../../main/contract/day.ts'
import { today } from '../app/storeDay.ts'
import { DayEntry } from '../ui/Entry.tsx'
import { useTexts } from '../ui/texts.tsx'
import { DayLine } from './DayLine.tsx'
import { PutOn } from './PutOn.tsx'
import { useDay } from './useDay.ts'
import { usePaper } from './usePaper.ts'
import './day.css'

/** A day's irons in the order to grind them, each with its bar and stops and why it stands there. */
export const DayPart = () => {
  const t = useTexts()
  const [onDay, setOnDay] = useState(today())
  const queue = useDay(onDay)
  return (
    <div className="day">
      <div className="day-head">
        <DayEntry name={t('day:onDay')} value={onDay} onChange={(day) => day !== '' && setOnDay(day)} />
        {onDay !== today() && (
          <button type="button" className="word" onClick={() => setOnDay(today())}>
            {t('day:today')}
          </button>
        )}
      </div>
      {queue && <Standing queue={queue} />}
      <PutOn onDay={onDay} leftOver={queue?.leftOver ?? 0} />
      {queue && queue.lines.length > 0 && (
        <>
          <ol className="day-lines" aria-label={t('day:title')}>
            {queue.lines.map((line) => (
              <DayLine key={line.entry.id} line={line} />
            ))}
          </ol>
          <OnPaper onDay={onDay} />
        </>
      )}
    </div>
  )
}

const Standing = ({ queue: { lines } }: { readonly queue: DayQueue }) => {
  const t = useTexts()
  const done = lines.filter(({ entry }) => entry.doneAt !== null).length
  if (lines.length === 0)
    return (
      <div>
        <p className="sentence">{t('day:standing.none')}</p>
        <p className="muted">{t('day:empty')}</p>
      </div>
    )
  return (
    <div>
      <p className="sentence">
        {t('day:standing.open', { count: lines.length - done })} {done > 0 && t('day:standing.done', { count: done })}
      </p>
      <p className="muted">{t('day:how')}</p>
    </div>
  )
}

const OnPaper = ({ onDay }: { readonly onDay: string }) => {
  const t = useTexts()
  const { busy, make, stop } = usePaper(onDay)
  return (
    <div className="sheet-keys">
      <button type="button" className="key" disabled={busy} onClick={() => void make('sheet')}>
        {t('day:sheet')}
      </button>
      <button type="button" className="key" disabled={busy} onClick={() => void make('cards')}>
        {t('day:cards')}
      </button>
      {busy && (
        <button type="button" className="word" onClick={stop}>
          {t('day:stop')}
        </button>
      )}
      <p role="status">{busy && t('day:making')}</p>
    </div>
  )
}

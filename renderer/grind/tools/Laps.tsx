import { fixed } from '../../../main/contract/figures.ts'
import { useTexts } from '../../ui/texts.tsx'
import { grindMs, type Lap, type Watch } from './stopwatch.ts'

interface LapsProps {
  readonly watch: Watch
  readonly sweepSeconds: number
  readonly time: (ms: number) => string
}

/** Moments taken, newest first, each with its times since the one before. */
export const Laps = ({ watch, sweepSeconds, time }: LapsProps) => {
  const t = useTexts()
  const { laps, fromSweep } = watch
  if (laps.length === 0) return <p className="grind-view-line">{t('tools:stopwatch.how')}</p>
  const before = (k: number): Lap => laps[k - 1] ?? { ms: 0, sweep: fromSweep ?? 0 }
  const lines = laps.map((lap, k) => ({
    ...lap,
    number: k + 1,
    words: t('tools:stopwatch.lapWords', {
      sweep: fixed(lap.sweep, 1),
      since: fixed(Math.abs(lap.sweep - before(k).sweep), 1),
      grind: time(grindMs(before(k).sweep, lap.sweep, sweepSeconds)),
      wall: time(lap.ms - before(k).ms),
    }),
  }))
  return (
    <ol className="tools-laps" aria-label={t('tools:stopwatch.laps')}>
      {lines.toReversed().map(({ number, words }) => (
        <li key={number}>
          {number}. {words}
        </li>
      ))}
    </ol>
  )
}

import { useEffect, useState } from 'react'
import { GUESSED_SWEEP_SECONDS } from '../../../geometry/removal.ts'
import { fixed } from '../../../main/contract/figures.ts'
import { useApp } from '../../app/store.ts'
import { useLearnt } from '../../learnt/useLearnt.ts'
import { FigureText } from '../../ui/FigureText.tsx'
import { useTexts } from '../../ui/texts.tsx'
import type { PanelProps } from '../GrindBar.tsx'
import { ViewHead } from '../Views.tsx'
import { Laps } from './Laps.tsx'
import { atNought, grindMs, lapped, shownAs, shownMs, started, stopped, type Watch } from './stopwatch.ts'
import { useToolbox } from './toolbox.ts'

/** A running watch shows tenths of a second (ms). */
const TICK_MS = 100

/** @returns how long a sweep takes (s), and whether the bench log knows it */
const useSweepSeconds = (): { readonly seconds: number; readonly known: boolean } => {
  const stationId = useApp((app) => app.station?.id ?? null)
  const noted = useLearnt(null, stationId).removal?.sweepSeconds ?? null
  return { seconds: noted ?? GUESSED_SWEEP_SECONDS, known: noted !== null }
}

/** The clock now, renewed while the watch runs. */
const useNow = (running: boolean): number => {
  const [nowMs, setNowMs] = useState(() => performance.now())
  useEffect(() => {
    setNowMs(performance.now())
    if (!running) return
    const timer = setInterval(() => setNowMs(performance.now()), TICK_MS)
    return () => clearInterval(timer)
  }, [running])
  return nowMs
}

const change = (next: (watch: Watch) => Watch): void => useToolbox.setState(({ watch }) => ({ watch: next(watch) }))

/** Counts the time of the wall, and the grind's own by its sweeps; laps tell the time between two moments of the run. */
export const StopwatchView = ({ moment }: PanelProps) => {
  const t = useTexts()
  const watch = useToolbox((box) => box.watch)
  const runs = watch.startedMs !== null
  const nowMs = useNow(runs)
  const { seconds, known } = useSweepSeconds()
  const time = (ms: number) => t('tools:stopwatch.time', { ...shownAs(ms) })
  const shown = shownMs(watch, nowMs)
  const ground = grindMs(watch.fromSweep ?? moment.sweep, moment.sweep, seconds)
  const perSweep = { seconds: fixed(seconds, 1) }
  return (
    <section className="grind-view" aria-label={t('tools:stopwatch.heading')}>
      <ViewHead
        heading={t('tools:stopwatch.heading')}
        note={t(known ? 'tools:stopwatch.noted' : 'tools:stopwatch.played', perSweep)}
      />
      <div className="tools-row" role={runs ? undefined : 'status'}>
        <FigureText figure={{ text: time(shown), unit: '' }} name={t('tools:stopwatch.wall')} size="large" />
        <FigureText figure={{ text: time(ground), unit: '' }} name={t('tools:stopwatch.grind')} size="large" />
      </div>
      <div className="tools-row">
        <button
          type="button"
          className="key"
          onClick={() =>
            change((now) => (runs ? stopped(now, performance.now()) : started(now, performance.now(), moment.sweep)))
          }
        >
          {t(runs ? 'tools:stopwatch.stop' : 'tools:stopwatch.start')}
        </button>
        <button
          type="button"
          className="key"
          onClick={() => change((now) => lapped(now, performance.now(), moment.sweep))}
        >
          {t('tools:stopwatch.lap')}
        </button>
        <button type="button" className="key" onClick={() => change(() => atNought)}>
          {t('tools:stopwatch.reset')}
        </button>
      </div>
      <Laps watch={watch} sweepSeconds={seconds} time={time} />
    </section>
  )
}

import { type ChangeEvent, useRef } from 'react'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { EventMarks } from './strip/EventMarks.tsx'
import { CURVE_PX, END_PX, RunCurve } from './strip/RunCurve.tsx'
import { type Moment, type Running, useHistoryLength } from './useLiveGrind.ts'
import { useSize } from './useScreen.ts'
import './runStrip.css'

interface RunStripProps {
  readonly running: Running
  readonly moment: Moment
  readonly wantedMm: number | null
  readonly onSeek: (sweep: number) => void
  readonly onStep: (step: number) => void
}

/** The whole grind on one line, to go back and forth in. */
export const RunStrip = ({ running, moment, wantedMm, onSeek, onStep }: RunStripProps) => {
  const ref = useRef<HTMLDivElement>(null)
  const size = useSize(ref)
  const worked = useHistoryLength(running)
  const t = useTexts()
  const { inWords } = useFigures()
  // A run taken in hand at its start has no length yet; the axis has.
  const lastStep = Math.max(moment.lastStep, 1)
  const sweeps = lastStep / running.shape.stepsPerSweep
  const sweep = Math.floor(moment.sweep)
  const relief = (mm: number) => inWords(mm, 'mm', 2)
  return (
    <div className="run-strip" ref={ref}>
      {size && (
        <RunCurve
          running={running}
          moment={moment}
          worked={worked}
          wantedMm={wantedMm}
          sweeps={sweeps}
          widthPx={size.widthPx - END_PX}
        />
      )}
      {size && (
        <EventMarks
          running={running}
          moment={moment}
          wantedMm={wantedMm}
          widthPx={size.widthPx - END_PX}
          lastStep={lastStep}
          topPx={CURVE_PX}
          onStep={onStep}
        />
      )}
      <input
        type="range"
        min={0}
        max={Math.ceil(sweeps)}
        step={1}
        value={sweep}
        aria-label={t('grind:run.slider')}
        aria-valuetext={t('grind:run.sliderValue', {
          sweep,
          sweeps: Math.floor(sweeps),
          left: relief(moment.reliefLeftMm),
          right: relief(moment.reliefRightMm),
        })}
        onChange={(event: ChangeEvent<HTMLInputElement>) => onSeek(Number(event.target.value))}
      />
    </div>
  )
}

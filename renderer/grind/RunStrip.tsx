import { type ChangeEvent, useMemo, useRef } from 'react'
import { meanReliefMm } from '../../geometry/edge.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { HistoryRow } from '../worker/protocol.ts'
import { useForetold } from './predict/predicting.ts'
import { EventMarks } from './strip/EventMarks.tsx'
import { type Moment, type Running, useHistoryLength } from './useLiveGrind.ts'
import { useSize } from './useScreen.ts'
import './runStrip.css'

const HEIGHT_PX = 80
/** The axis from the top; below it stand the figures of the sweeps, and below them what happened when. */
const AXIS_PX = 54
const TOP_PX = 18
/** Room for the last figure (px). */
const END_PX = 18
/** Least distance between two figures on the axis (px). */
const TICK_PX = 60
const TICK_SWEEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const

interface RunStripProps {
  readonly running: Running
  readonly moment: Moment
  readonly wantedMm: number | null
  readonly onSeek: (sweep: number) => void
  readonly onStep: (step: number) => void
}

/** Relief from the start to a sweep or between two. */
const reliefPath = (rows: readonly HistoryRow[], from: number, x: (k: number) => number, y: (mm: number) => number) =>
  rows.map((row, k) => `${k === 0 ? 'M' : 'L'}${x(from + k).toFixed(1)} ${y(meanReliefMm(row)).toFixed(1)}`).join('')

/** The whole grind on one line, to go back and forth in. */
export const RunStrip = ({ running, moment, wantedMm, onSeek, onStep }: RunStripProps) => {
  const ref = useRef<HTMLDivElement>(null)
  const size = useSize(ref)
  const worked = useHistoryLength(running)
  const t = useTexts()
  const { inWords } = useFigures()
  const sweeps = moment.lastStep / running.shape.stepsPerSweep
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
          lastStep={moment.lastStep}
          topPx={HEIGHT_PX}
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

interface RunCurveProps {
  readonly running: Running
  readonly moment: Moment
  /** Sweeps worked out so far. */
  readonly worked: number
  readonly wantedMm: number | null
  /** Length of the run, not whole where the hand let go within a sweep. */
  readonly sweeps: number
  readonly widthPx: number
}

const RunCurve = ({ running, moment, worked, wantedMm, sweeps, widthPx }: RunCurveProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const foretold = useForetold()
  const rows = running.live.history.slice(0, worked)
  const mostMm = useMemo(() => Math.max(wantedMm ?? 0, ...rows.map(meanReliefMm), 0.02) * 1.08, [wantedMm, rows])
  const x = (sweep: number) => (sweep / sweeps) * widthPx
  const y = (mm: number) => AXIS_PX - (mm / mostMm) * (AXIS_PX - TOP_PX)
  const whole = Math.floor(moment.sweep)
  // The name of the wanted line stands where the playhead is not.
  const early = moment.sweep < sweeps / 2
  const now: HistoryRow = moment
  const done = `${reliefPath(rows.slice(0, whole + 1), 0, x, y)}L${x(moment.sweep)} ${y(meanReliefMm(now))}`
  const ahead = reliefPath(rows.slice(whole), whole, x, y)
  return (
    <svg width={widthPx + END_PX} height={HEIGHT_PX} aria-hidden="true" className="run-curve">
      {rows.length > 0 && <path className="grind-now-body" d={`${done}V${AXIS_PX}H0Z`} />}
      {rows.length > 0 && <path className="run-done" d={done} />}
      {foretold && <path className="grind-predicted" d={ahead} />}
      <path className="datum-line" d={`M0 ${AXIS_PX}H${widthPx}`} />
      <Ticks sweeps={sweeps} widthPx={widthPx} hideNear={moment.sweep} />
      {wantedMm !== null && (
        <g>
          <path className="grind-wanted" d={`M0 ${y(wantedMm)}H${widthPx}`} />
          <text className="end-wanted" x={early ? widthPx : 2} y={y(wantedMm) - 6} textAnchor={early ? 'end' : 'start'}>
            {t('grind:run.wanted', { relief: inWords(wantedMm, 'mm', 2) })}
          </text>
        </g>
      )}
      <g transform={`translate(${x(moment.sweep)} 0)`}>
        <path className="grind-playhead" d={`M0 ${TOP_PX - 12}V${AXIS_PX + 6}`} />
        <rect className="playhead-tag" x={-21} y={AXIS_PX + 6} width={42} height={22} />
        <text className="playhead-text" x={0} y={AXIS_PX + 22}>
          {whole}
        </text>
      </g>
    </svg>
  )
}

interface TicksProps {
  readonly sweeps: number
  readonly widthPx: number
  /** The playhead's tag stands there. */
  readonly hideNear: number
}

const Ticks = ({ sweeps, widthPx, hideNear }: TicksProps) => {
  const pxPerSweep = widthPx / sweeps
  const step = TICK_SWEEPS.find((count) => count * pxPerSweep >= TICK_PX) ?? 1000
  const places = Array.from({ length: Math.floor(sweeps / step) + 1 }, (_, k) => k * step)
  return (
    <g>
      {places.map((sweep) => (
        <g key={sweep} transform={`translate(${sweep * pxPerSweep} ${AXIS_PX})`}>
          <path className="grind-tick" d="M0 0V7" />
          {Math.abs(sweep - hideNear) * pxPerSweep > 40 && (
            <text className="tick-text" x={0} y={22}>
              {sweep}
            </text>
          )}
        </g>
      ))}
    </g>
  )
}

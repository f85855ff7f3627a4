import { useMemo } from 'react'
import { meanReliefMm } from '../../../geometry/edge.ts'
import { textScale } from '../../ui/textScale.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { HistoryRow } from '../../worker/protocol.ts'
import { useForetold } from '../predict/predicting.ts'
import type { Moment, Running } from '../useLiveGrind.ts'

/** From the strip's top to below the figures of the sweeps. */
export const CURVE_PX = 80
/** The axis from the top; below it stand the figures of the sweeps, and below them what happened when. */
export const AXIS_PX = 54
const TOP_PX = 18
/** Room for the last figure (px). */
export const END_PX = 18
/** Least distance between two figures on the axis (px). */
const TICK_PX = 60
const TICK_SWEEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const

/** Relief from the start to a sweep or between two. */
const reliefPath = (rows: readonly HistoryRow[], from: number, x: (k: number) => number, y: (mm: number) => number) =>
  rows.map((row, k) => `${k === 0 ? 'M' : 'L'}${x(from + k).toFixed(1)} ${y(meanReliefMm(row)).toFixed(1)}`).join('')

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

/** Relief from sweep to sweep: what is ground, what is to come, what is wanted, and where the playhead stands. */
export const RunCurve = ({ running, moment, worked, wantedMm, sweeps, widthPx }: RunCurveProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const foretold = useForetold()
  const rows = running.live.history.slice(0, worked)
  const mostMm = useMemo(() => Math.max(wantedMm ?? 0, ...rows.map(meanReliefMm), 0.02) * 1.08, [wantedMm, rows])
  const x = (sweep: number) => (sweep / sweeps) * widthPx
  const y = (mm: number) => AXIS_PX - (mm / mostMm) * (AXIS_PX - TOP_PX)
  const whole = Math.floor(moment.sweep)
  const { handFromStep } = moment
  const fromSweep = handFromStep === null ? null : handFromStep / running.shape.stepsPerSweep
  // The name of the wanted line stands where the playhead is not.
  const early = moment.sweep < sweeps / 2
  const now: HistoryRow = moment
  const done = `${reliefPath(rows.slice(0, whole + 1), 0, x, y)}L${x(moment.sweep)} ${y(meanReliefMm(now))}`
  const ahead = reliefPath(rows.slice(whole), whole, x, y)
  return (
    <svg width={widthPx + END_PX} height={CURVE_PX} aria-hidden="true" className="run-curve">
      {rows.length > 0 && <path className="grind-now-body" d={`${done}V${AXIS_PX}H0Z`} />}
      {rows.length > 0 && <path className="run-done" d={done} />}
      {foretold && <path className="grind-predicted" d={ahead} />}
      <path className="datum-line" d={`M0 ${AXIS_PX}H${widthPx}`} />
      {fromSweep !== null && <HandMark fromPx={x(fromSweep)} toPx={widthPx} />}
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

/** The part that was made by hand: a bracket over the axis, with its word. */
const HandMark = ({ fromPx, toPx }: { readonly fromPx: number; readonly toPx: number }) => {
  const t = useTexts()
  return (
    <g className="hand-mark">
      <path d={`M${fromPx} ${AXIS_PX}v-8H${toPx}v8`} />
      <text x={fromPx + 6} y={AXIS_PX - 12}>
        {t('grind:run.byHand')}
      </text>
    </g>
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
  const step = TICK_SWEEPS.find((count) => count * pxPerSweep >= TICK_PX * textScale()) ?? 1000
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

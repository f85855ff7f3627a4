import { useMemo, useRef } from 'react'
import { machineFigures } from '../../scene/placement.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { RunShape } from '../../worker/protocol.ts'
import { moveTo, type PointRow, usePointRow } from '../pointRow.ts'
import { firstTouching, lastTouching } from '../touching.ts'
import { type Moment, useEachFrame } from '../useLiveGrind.ts'
import { type BackLine, type BackPlot, backX, backY, fillWheelLine } from './backPlan.ts'
import type { ViewProps } from './room.ts'

/** The load is pressed so far above the edge (mm). */
const LOAD_V_MM = 13

interface BladeProps {
  readonly running: ViewProps['running']
  readonly moment: Moment
  readonly lifted: boolean
  readonly plot: BackPlot
  /** Where there is room, everything carries its name. */
  readonly named: boolean
}

/** Names stand so far from what they name (px): under the wheel's line, over the edge, beside the load. */
const UNDER_PX = 22
const OVER_PX = 10
const BESIDE_PX = 12

/** Outline, the wheel's line at its true angle, where it touches, and where the load is pressed. */
export const BackBlade = ({ running, moment, lifted, plot, named }: BladeProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const body = usePointRow<SVGPolygonElement>()
  const wheel = usePointRow<SVGPolylineElement>()
  const touch = usePointRow<SVGPolylineElement>()
  const load = useRef<SVGGElement>(null)
  const wheelName = useRef<SVGTextElement>(null)
  const touchName = useRef<SVGTextElement>(null)
  const { job, setUp, shape } = running
  const figures = useMemo(() => machineFigures(job, setUp), [job, setUp])
  const line = useMemo(() => new Float64Array(4), [])
  useEachFrame(running, (frame) => {
    const { vMm, pressureNPerMm } = frame
    body.start()
    addEdge(body, plot, shape, vMm, 0, shape.acrossCount - 1)
    addBrokenBack(body, plot)
    body.end()
    fillWheelLine(line, shape, vMm, job.station.wheelWidthMm, figures, frame)
    wheel.start()
    if (!lifted) addWheel(wheel, plot, line)
    wheel.end()
    // A wheel wider than the blade begins outside the plot.
    moveTo(wheelName.current, Math.max(backX(plot, line[0] as number), 0), backY(plot, line[1] as number) + UNDER_PX)
    const from = lifted ? -1 : firstTouching(pressureNPerMm)
    touch.start()
    if (from >= 0) {
      const to = lastTouching(pressureNPerMm)
      addEdge(touch, plot, shape, vMm, from, to)
      const middle = (from + to) >> 1
      const edgeMm = vMm[middle * shape.throughCount] as number
      moveTo(touchName.current, backX(plot, shape.uMm[middle] as number), backY(plot, edgeMm) - OVER_PX)
    }
    touch.end()
    moveTo(load.current, backX(plot, frame.loadPlaceMm), Math.max(backY(plot, LOAD_V_MM), plot.topPx + 12))
  })
  return (
    <>
      <polygon ref={body.ref} className="back-blade" />
      <polyline ref={wheel.ref} className="back-wheel" data-testid="wheel-line" />
      <polyline ref={touch.ref} className="grind-now-touch" />
      <g ref={load} className="back-load" visibility={lifted ? 'hidden' : 'visible'} data-testid="back-load">
        <circle r={7} />
        <path d="M-5 -5L5 5M-5 5L5 -5" />
        {named && (
          <text x={BESIDE_PX} y={5}>
            {t('views:backPlan.loadHere', { load: inWords(job.motion.loadN, 'N', 0) })}
          </text>
        )}
      </g>
      {named && !lifted && (
        <>
          <text ref={wheelName}>
            {t('views:backPlan.wheel', { width: inWords(job.station.wheelWidthMm, 'mm', 0) })}
          </text>
          <text ref={touchName} className="back-touching" textAnchor="middle">
            {moment.touchingMm > 0 && t('views:backPlan.touching', { width: inWords(moment.touchingMm, 'mm', 0) })}
          </text>
        </>
      )}
    </>
  )
}

type Row = Pick<PointRow, 'add'>

const addEdge = (
  row: Row,
  plot: BackPlot,
  { uMm, throughCount }: RunShape,
  vMm: Float64Array,
  from: number,
  to: number,
) => {
  for (let i = from; i <= to; i++) row.add(backX(plot, uMm[i] as number), backY(plot, vMm[i * throughCount] as number))
}

/** A side of the wheel is marked so far up and down (px). */
const TICK_PX = 6

/** The wheel's line in one stroke, with a mark at each end. */
const addWheel = (row: Row, plot: BackPlot, line: BackLine): void => {
  for (let end = 0; end < 2; end++) {
    const x = backX(plot, line[2 * end] as number)
    const y = backY(plot, line[2 * end + 1] as number)
    row.add(x, y)
    row.add(x, y - TICK_PX)
    row.add(x, y + TICK_PX)
    row.add(x, y)
  }
}

/** The break's two bows go this far off (px), drawn in so many points each. */
const BREAK_PX = 6
const BREAK_POINTS = 12

/** Where the blade is broken off, from right to left: one bow up, one down. */
const addBrokenBack = (row: Row, { topPx, plotPx }: BackPlot): void => {
  for (let k = 0; k <= 2 * BREAK_POINTS; k++) {
    const share = k / BREAK_POINTS
    const inBow = share < 1 ? share : share - 1
    const off = 4 * BREAK_PX * inBow * (1 - inBow)
    row.add(plotPx * (1 - share / 2), share < 1 ? topPx - off : topPx + off)
  }
}

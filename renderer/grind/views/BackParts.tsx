import { useMemo, useRef } from 'react'
import { machineFigures } from '../../scene/placement.ts'
import { useTexts } from '../../ui/texts.tsx'
import type { RunShape } from '../../worker/protocol.ts'
import { moveTo, type PointRow, setSpan, usePointRow } from '../pointRow.ts'
import { stopsOf } from '../stops.ts'
import { firstTouching, lastTouching } from '../touching.ts'
import { type Moment, useEachFrame } from '../useLiveGrind.ts'
import { type BackLine, type BackPlot, backX, backY, fillWheelLine, freeWayMm } from './backPlan.ts'
import type { ViewProps } from './room.ts'

/** Height of the guide between its stops, drawn over the blade (px). */
export const GUIDE_PX = 36
/** Half the width of the guide, and the length of a screw as drawn (mm): plain schematic parts. */
const GUIDE_MM = 9
const SCREW_MM = 12
/** The load is pressed so far above the edge (mm). */
const LOAD_V_MM = 13

interface BladeProps {
  readonly running: ViewProps['running']
  readonly lifted: boolean
  readonly plot: BackPlot
}

/** Outline, the wheel's line at its true angle, where it touches, and where the load is pressed. */
export const BackBlade = ({ running, lifted, plot }: BladeProps) => {
  const body = usePointRow<SVGPolygonElement>()
  const wheel = usePointRow<SVGPolylineElement>()
  const touch = usePointRow<SVGPolylineElement>()
  const load = useRef<SVGGElement>(null)
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
    const from = lifted ? -1 : firstTouching(pressureNPerMm)
    touch.start()
    if (from >= 0) addEdge(touch, plot, shape, vMm, from, lastTouching(pressureNPerMm))
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
      </g>
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

interface StopsProps {
  readonly running: ViewProps['running']
  readonly moment: Moment
  readonly lifted: boolean
  readonly pxPerMm: number
  readonly plotPx: number
}

/** The guide at the upper end of the fixture between its two screws, to the blade's scale: the free way left is seen. */
export const BackStops = ({ running, moment, lifted, pxPerMm, plotPx }: StopsProps) => {
  const t = useTexts()
  const { job, setUp } = running
  const stops = useMemo(() => stopsOf(job, setUp), [job, setUp])
  const left = useRef<SVGRectElement>(null)
  const right = useRef<SVGRectElement>(null)
  const middlePx = plotPx / 2 + job.fixture.pivotOffsetMm * pxPerMm
  const screwPx = SCREW_MM * pxPerMm
  useEachFrame(running, (frame) => {
    const arm = job.fixture.guideArmMm ?? 0
    const leftPx = (GUIDE_MM + freeWayMm(stops.leftMm, -1, arm, frame.yawRad)) * pxPerMm
    const rightPx = (GUIDE_MM + freeWayMm(stops.rightMm, 1, arm, frame.yawRad)) * pxPerMm
    setSpan(left.current, middlePx - leftPx - screwPx, screwPx)
    setSpan(right.current, middlePx + rightPx, screwPx)
  })
  const bears = (side: 'left' | 'right') => !lifted && moment.bearing === side
  return (
    <g>
      <rect
        className="back-guide"
        x={middlePx - GUIDE_MM * pxPerMm}
        width={2 * GUIDE_MM * pxPerMm}
        y={2}
        height={GUIDE_PX - 4}
      />
      <rect ref={left} className="back-screw" data-bears={bears('left')} y={12} height={GUIDE_PX - 24} />
      <rect ref={right} className="back-screw" data-bears={bears('right')} y={12} height={GUIDE_PX - 24} />
      {bears('left') && (
        <text x={0} y={GUIDE_PX - 12}>
          {t('views:backPlan.bears')}
        </text>
      )}
      {bears('right') && (
        <text x={plotPx} y={GUIDE_PX - 12} textAnchor="end">
          {t('views:backPlan.bears')}
        </text>
      )}
    </g>
  )
}

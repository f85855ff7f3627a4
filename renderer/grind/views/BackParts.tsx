import { useMemo, useRef } from 'react'
import { machineFigures } from '../../scene/placement.ts'
import { useTexts } from '../../ui/texts.tsx'
import type { Frame } from '../../worker/protocol.ts'
import { stopsOf } from '../stops.ts'
import { touchingColumns } from '../touching.ts'
import { type Moment, useEachFrame } from '../useLiveGrind.ts'
import { type BackPoint, freeWays, wheelLine } from './backPlan.ts'
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
  readonly place: (point: BackPoint) => readonly [number, number]
  readonly topPx: number
  readonly plotPx: number
}

/** Outline, the wheel's line at its true angle, where it touches, and where the load is pressed. */
export const BackBlade = ({ running, lifted, place, topPx, plotPx }: BladeProps) => {
  const body = useRef<SVGPathElement>(null)
  const wheel = useRef<SVGPathElement>(null)
  const touch = useRef<SVGPathElement>(null)
  const load = useRef<SVGGElement>(null)
  const { job, setUp, shape } = running
  const figures = useMemo(() => machineFigures(job, setUp), [job, setUp])
  const path = (points: readonly BackPoint[]) =>
    `M${points
      .map((each) =>
        place(each)
          .map((px) => px.toFixed(2))
          .join(' '),
      )
      .join('L')}`
  useEachFrame(running, (frame) => {
    const { uMm, throughCount } = shape
    const edgeV = (i: number) => frame.vMm[i * throughCount] as number
    const edge = Array.from(uMm, (u, i): BackPoint => [u, edgeV(i)])
    body.current?.setAttribute('d', `${path(edge)}V${topPx}${brokenBack(plotPx)}Z`)
    const ends = wheelLine(uMm, edgeV, job.station.wheelWidthMm, { ...figures, ...turnOf(frame) })
    wheel.current?.setAttribute('d', lifted ? '' : path(ends) + ends.map((end) => tickAt(place(end))).join(''))
    const columns = lifted ? null : touchingColumns(frame.pressureNPerMm)
    touch.current?.setAttribute('d', columns ? path(edge.slice(columns[0], columns[1] + 1)) : '')
    const [x, y] = place([frame.loadPlaceMm, LOAD_V_MM])
    load.current?.setAttribute('transform', `translate(${x.toFixed(2)} ${Math.max(y, topPx + 12).toFixed(2)})`)
  })
  return (
    <>
      <path ref={body} className="back-blade" />
      <path ref={wheel} className="back-wheel" data-testid="wheel-line" />
      <path ref={touch} className="grind-now-touch" />
      <g ref={load} className="back-load" visibility={lifted ? 'hidden' : 'visible'} data-testid="back-load">
        <circle r={7} />
        <path d="M-5 -5L5 5M-5 5L5 -5" />
      </g>
    </>
  )
}

const turnOf = ({ yawRad, traverseMm }: Frame) => ({ yawRad, traverseMm })

/** Marks an end of the wheel's line: a side of the wheel (px). */
const tickAt = ([x, y]: readonly [number, number]): string => `M${x.toFixed(2)} ${(y - 6).toFixed(2)}v12`

/** Where the blade is broken off, from right to left. */
const brokenBack = (plotPx: number): string => `q${-plotPx / 4} -12 ${-plotPx / 2} 0t${-plotPx / 2} 0`

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
    const free = freeWays(stops, job.fixture.guideArmMm ?? 0, frame.yawRad)
    left.current?.setAttribute('x', String(middlePx - (GUIDE_MM + free.leftMm) * pxPerMm - screwPx))
    right.current?.setAttribute('x', String(middlePx + (GUIDE_MM + free.rightMm) * pxPerMm))
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
      <rect
        ref={left}
        className="back-screw"
        data-bears={bears('left')}
        width={screwPx}
        y={12}
        height={GUIDE_PX - 24}
      />
      <rect
        ref={right}
        className="back-screw"
        data-bears={bears('right')}
        width={screwPx}
        y={12}
        height={GUIDE_PX - 24}
      />
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

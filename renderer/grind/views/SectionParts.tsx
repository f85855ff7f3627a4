import { useId, useMemo } from 'react'
import { recessionAtEdge } from '../../../geometry/protractor.ts'
import { barAxisMm, machineFigures } from '../../scene/placement.ts'
import type { Layout } from '../../setUp/layout.ts'
import { BEYOND_BAR_MM, fixtureOutlines, wheelPath } from '../../setUp/outlines.ts'
import type { Point, Triangle } from '../../setUp/triangle.ts'
import { useTexts } from '../../ui/texts.tsx'
import { type PointRow, usePointRow } from '../pointRow.ts'
import { type Running, useEachFrame } from '../useLiveGrind.ts'
import { bladeAt } from './liveTriangle.ts'
import { nearestColumn } from './place.ts'
import type { SectionPlan } from './sectionLayout.ts'
import { type SectionPen, sectionPen } from './sectionPen.ts'

/** The angle's arc at the edge magnified, how far its sides go beyond it (px), and the points it is drawn in. */
const NEAR_ARC_PX = 44
const SIDES_PX = 26
const ARC_POINTS = 12

/** The layout, with the triangle before the first step that it was made for. */
export interface Plan extends SectionPlan {
  readonly still: Triangle
}

interface DrawnProps {
  readonly running: Running
  readonly plan: Plan
  readonly uMm: number
}

/** Draws a section by hand with every frame. @param draw told the column that is cut, as the field counts */
const useSection = (
  { running, uMm }: Omit<DrawnProps, 'plan'>,
  layout: Layout,
  draw: (pen: SectionPen, vMm: Float64Array, first: number) => void,
) => {
  const pen = useMemo(() => sectionPen(bladeAt(machineFigures(running.job, running.setUp)), layout), [running, layout])
  useEachFrame(running, (frame) => {
    const { uMm: columns, throughCount } = running.shape
    const i = nearestColumn(columns, uMm)
    pen.blade.set(frame, columns[i] as number)
    draw(pen, frame.vMm, i * throughCount)
  })
}

/** The blade in section as it is ground, up to beyond the bar. */
const drawBlade = (
  row: PointRow,
  pen: SectionPen,
  { job, setUp, shape }: Running,
  vMm: Float64Array,
  first: number,
) => {
  const endMm = setUp.projectionMm + BEYOND_BAR_MM
  row.start()
  pen.onBlade(row, endMm, 0)
  for (let j = 0; j < shape.throughCount; j++) pen.onBlade(row, vMm[first + j] as number, shape.nMm[j] as number)
  pen.onBlade(row, endMm, job.blade.thicknessMm)
  row.end()
}

/** Places of blade and fixture, v and n: they move with the blade. */
const asOnBlade = { onBlade: (vMm: number, nMm: number): Point => [vMm, nMm] }

/** Wheel, fixture and blade, and the triangle of the three axes. */
export const Machine = ({ running, plan: { machine }, uMm }: DrawnProps) => {
  const { job, setUp } = running
  const block = usePointRow<SVGPolygonElement>()
  const plate = usePointRow<SVGPolygonElement>()
  const blade = usePointRow<SVGPolygonElement>()
  const sides = usePointRow<SVGPolygonElement>()
  const parts = useMemo(() => fixtureOutlines(asOnBlade, setUp, job), [setUp, job])
  const bar = useMemo(() => barAxisMm(machineFigures(job, setUp)), [job, setUp])
  useSection({ running, uMm }, machine, (pen, vMm, first) => {
    drawPart(block, pen, parts[0])
    drawPart(plate, pen, parts[1])
    drawBlade(blade, pen, running, vMm, first)
    sides.start()
    pen.add(sides, 0, 0)
    pen.add(sides, bar[1], bar[0])
    pen.onBlade(sides, vMm[first] as number, 0)
    sides.end()
  })
  return (
    <g>
      <path className="wheel" d={wheelPath(machine)} />
      <polygon ref={block.ref} className="fixture-part" />
      <polygon ref={plate.ref} className="fixture-part" />
      <polygon ref={blade.ref} className="blade" />
      <polygon ref={sides.ref} className="triangle-line" />
    </g>
  )
}

const drawPart = (row: PointRow, pen: SectionPen, outline: readonly Point[] | undefined): void => {
  row.start()
  for (let k = 0; outline && k < outline.length; k++) {
    const place = outline[k] as Point
    pen.onBlade(row, place[0], place[1])
  }
  row.end()
}

/** The edge on the rim, magnified alike both ways: bevel as ground, its angle at the tip, and its chord. */
export const Near = ({ running, plan: { near, nearBox }, uMm }: DrawnProps) => {
  const clip = useId()
  const t = useTexts()
  const blade = usePointRow<SVGPolygonElement>()
  const angle = usePointRow<SVGPolylineElement>()
  const arc = usePointRow<SVGPolylineElement>()
  const chord = usePointRow<SVGPolylineElement>()
  const { throughCount, nMm } = running.shape
  useSection({ running, uMm }, near, (pen, vMm, first) => {
    const edgeMm = vMm[first] as number
    const heel = throughCount - 1
    drawBlade(blade, pen, running, vMm, first)
    chord.start()
    pen.onBlade(chord, edgeMm, 0)
    pen.onBlade(chord, vMm[first + heel] as number, nMm[heel] as number)
    chord.end()
    const back = pen.backRad()
    const wheel = back - Math.atan2(1, recessionAtEdge(nMm, vMm, first))
    angle.start()
    pen.fromEdge(angle, edgeMm, back, NEAR_ARC_PX + SIDES_PX)
    pen.onBlade(angle, edgeMm, 0)
    pen.fromEdge(angle, edgeMm, wheel, NEAR_ARC_PX + SIDES_PX)
    angle.end()
    arc.start()
    for (let k = 0; k <= ARC_POINTS; k++)
      pen.fromEdge(arc, edgeMm, back + ((wheel - back) * k) / ARC_POINTS, NEAR_ARC_PX)
    arc.end()
  })
  const [axleX, axleY] = near.px([0, 0])
  const { leftPx, topPx, widthPx, heightPx } = nearBox
  return (
    <g>
      <clipPath id={clip}>
        <rect x={leftPx} y={topPx} width={widthPx} height={heightPx} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        <circle className="wheel" cx={axleX} cy={axleY} r={near.radiusPx} />
        <polygon ref={blade.ref} className="near-blade" />
        <polyline ref={angle.ref} className="dimension" />
        <polyline ref={arc.ref} className="dimension" />
        <polyline ref={chord.ref} className="axis" />
        <text className="near-word" x={leftPx + 8} y={topPx + heightPx - 8}>
          {t('views:section.wheel')}
        </text>
      </g>
      <rect className="near-frame" x={leftPx} y={topPx} width={widthPx} height={heightPx} />
    </g>
  )
}

/** The triangle's sides in words, where there is room for them. */
export interface Lengths {
  readonly axes: string
  readonly projection: string
  readonly radius: string
}

interface SidesProps {
  readonly plan: Plan
  readonly tip: string
  readonly lengths: Lengths | null
}

/** Figures stand so far from what they measure (px). */
const OFF_PX = 10

/** The angle at the tip beside its arc, and the lengths beside their sides. */
export const SideFigures = ({ plan: { near, machine, still }, tip, lengths }: SidesProps) => {
  const t = useTexts()
  const [tipX, tipY] = near.px(still.edge)
  const between = (a: Point, b: Point) => machine.px([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])
  const axes = between([0, 0], still.bar)
  const along = between(still.onBlade(0, 0), still.bar)
  const radius = between([0, 0], still.edge)
  return (
    <>
      <text className="near-word" x={tipX + OFF_PX} y={tipY + NEAR_ARC_PX} textAnchor="end">
        {tip}
      </text>
      {lengths && (
        <>
          <text x={axes[0] - OFF_PX} y={axes[1]} textAnchor="end">
            {t('views:section.axes', { length: lengths.axes })}
          </text>
          <text x={along[0] + 2 * OFF_PX} y={along[1]}>
            {t('views:section.projection', { length: lengths.projection })}
          </text>
          <text x={radius[0] + OFF_PX} y={radius[1] + OFF_PX}>
            {t('views:section.radius', { length: lengths.radius })}
          </text>
        </>
      )}
    </>
  )
}

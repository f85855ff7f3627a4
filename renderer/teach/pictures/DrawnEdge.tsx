import type { PointerEventHandler } from 'react'
import { drawnShares } from '../../../geometry/lesson/drawn.ts'
import { ScaleBar } from '../../ui/ScaleBar.tsx'
import { PX_PER_MM } from '../../ui/scale.ts'

/** Size of the drawing in its own units. */
export const WIDTH_PX = 480
export const HEIGHT_PX = 190
const MARGIN_PX = 24
/** Room at the right for the scale bar. */
const BAR_PX = 78
const TOP_PX = 18
const FOOT_PX = 16

/** @param mostMm as far back as the drawing goes @returns where a share of the width and a depth stand */
export const drawnScale = (mostMm: number) => {
  const pxPerMm = (HEIGHT_PX - TOP_PX - FOOT_PX) / mostMm
  return {
    xPx: (share: number): number => MARGIN_PX + share * (WIDTH_PX - MARGIN_PX - BAR_PX),
    yPx: (mm: number): number => TOP_PX + mm * pxPerMm,
    pxPerMm,
    mmAt: (yPx: number): number => (yPx - TOP_PX) / pxPerMm,
  }
}

interface DrawnEdgeProps {
  readonly drawnMm: readonly number[]
  /** The engine's edge at the same places; null: not yet to be told. */
  readonly cameMm: readonly number[] | null
  readonly mostMm: number
  readonly label: string
  readonly onPointerDown?: PointerEventHandler<SVGSVGElement>
  readonly onPointerMove?: PointerEventHandler<SVGSVGElement>
}

/** The edge as somebody drew it, and as it came. */
export const DrawnEdge = ({ drawnMm, cameMm, mostMm, label, ...pointer }: DrawnEdgeProps) => {
  const { xPx, yPx, pxPerMm } = drawnScale(mostMm)
  const line = (edge: readonly number[]) =>
    `M${drawnShares.map((share, k) => `${xPx(share)} ${yPx(edge[k] as number).toFixed(1)}`).join('L')}`
  return (
    <svg
      className="drawing teach-drawn"
      viewBox={`0 0 ${WIDTH_PX} ${HEIGHT_PX}`}
      role="img"
      aria-label={label}
      data-live={pointer.onPointerDown !== undefined}
      {...pointer}
    >
      <path className="grind-stations" d={drawnShares.map((share) => `M${xPx(share)} 0V${HEIGHT_PX}`).join('')} />
      <path className="grind-datum" d={`M${xPx(0)} ${TOP_PX}H${xPx(1)}`} />
      {cameMm && <path className="now" d={line(cameMm)} />}
      <path className="teach-drawn-line" d={line(drawnMm)} />
      <ScaleBar
        xPx={WIDTH_PX - BAR_PX + 14}
        yPx={TOP_PX}
        factor={pxPerMm / PX_PER_MM}
        mostPx={HEIGHT_PX - TOP_PX - FOOT_PX}
        upright
      />
      {drawnShares.map((share, k) => (
        <circle key={share} className="teach-drawn-place" cx={xPx(share)} cy={yPx(drawnMm[k] as number)} r={6} />
      ))}
    </svg>
  )
}

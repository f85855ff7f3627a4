import { useId } from 'react'
import { type CurveScale, drawEdge } from '../curves.ts'
import { usePointRow } from '../pointRow.ts'
import type { Running } from '../useLiveGrind.ts'
import type { Deviation } from './deviation.ts'
import { type Paired, useEachEdge } from './useEachEdge.ts'

/** The dash that tells the other edge from every line of the glass, without colour. */
const DASH = '14 4 3 4'

interface OtherCurveProps {
  readonly running: Running
  readonly scale: CurveScale
  readonly plotPx: number
  readonly heightPx: number
  readonly paired: Paired
}

/** The other job's edge in the own one's glass, in its scale; what is wider than the glass is not shown. */
export const OtherCurve = ({ running, scale, plotPx, heightPx, paired }: OtherCurveProps) => {
  const id = useId()
  const line = usePointRow<SVGPolylineElement>()
  const last = running.shape.acrossCount - 1
  useEachEdge(running, paired, (vMm, _pressure, shape) => drawEdge(line, vMm, shape, scale, 0, last))
  return (
    <g clipPath={`url(#${id})`}>
      <clipPath id={id}>
        <rect y={-4} width={plotPx} height={heightPx + 4} />
      </clipPath>
      <polyline ref={line.ref} className="compare-line" strokeDasharray={DASH} />
    </g>
  )
}

/** Half the width of the strokes that end the mark (px). */
const STROKE_PX = 5

/** Where both edges lie furthest apart: from the one to the other. */
export const ApartMark = ({ deviation, scale }: { readonly deviation: Deviation; readonly scale: CurveScale }) => {
  const x = (deviation.atUMm - scale.leftMm) * scale.acrossPxPerMm
  const y = (behindMm: number) => scale.topPx + behindMm * scale.depthPxPerMm
  const [from, to] = [y(deviation.behindMm), y(deviation.behindMm + deviation.byMm)]
  const stroke = (at: number) => `M${x - STROKE_PX} ${at}h${2 * STROKE_PX}`
  return <path className="compare-apart" d={`M${x} ${from}V${to}${stroke(from)}${stroke(to)}`} />
}

/** A piece of the other edge's line, for its name to stand beside. */
export const OtherSample = () => (
  <svg width={40} height={10} aria-hidden="true">
    <path className="compare-line" strokeDasharray={DASH} d="M0 5H40" />
  </svg>
)

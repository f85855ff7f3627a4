import { useMemo, useRef } from 'react'
import type { GrindReport } from '../../geometry/report.ts'
import { type CurveScale, curvePath, wantedAt } from './curves.ts'
import { touchingColumns } from './touching.ts'
import { type Running, useEachFrame } from './useLiveGrind.ts'

interface NowCurveProps {
  readonly running: Running
  readonly scale: CurveScale
  readonly heightPx: number
  /** Lifted off the wheel: nothing touches. */
  readonly lifted: boolean
}

/** The edge as it is, the iron below it, and where the wheel touches it. */
export const NowCurve = ({ running, scale, heightPx, lifted }: NowCurveProps) => {
  const line = useRef<SVGPathElement>(null)
  const body = useRef<SVGPathElement>(null)
  const touch = useRef<SVGPathElement>(null)
  const shade = useRef<SVGRectElement>(null)
  const { uMm, throughCount } = running.shape
  useEachFrame(running, (frame) => {
    const path = curvePath(uMm, (i) => frame.vMm[i * throughCount] as number, scale)
    line.current?.setAttribute('d', path)
    body.current?.setAttribute('d', `${path}V${heightPx}H0Z`)
    const columns = lifted ? null : touchingColumns(frame.pressureNPerMm)
    const points = path.slice(1).split('L')
    touch.current?.setAttribute('d', columns ? `M${points.slice(columns[0], columns[1] + 1).join('L')}` : '')
    const at = (i: number) => ((uMm[i] as number) - scale.leftMm) * scale.acrossPxPerMm
    shade.current?.setAttribute('x', String(columns ? at(columns[0]) : 0))
    shade.current?.setAttribute('width', String(columns ? at(columns[1]) - at(columns[0]) : 0))
  })
  return (
    <g>
      <rect ref={shade} className="grind-touch-shade" y={0} height={heightPx} />
      <path ref={body} className="grind-now-body" />
      <path ref={line} className="grind-now-line" />
      <path ref={touch} className="grind-now-touch" />
    </g>
  )
}

interface PredictedCurveProps {
  readonly predicted: GrindReport
  readonly scale: CurveScale
}

/** The edge that the whole grind is predicted to leave. */
export const PredictedCurve = ({ predicted, scale }: PredictedCurveProps) => {
  const path = useMemo(
    () => curvePath(predicted.edgeUMm, (i) => predicted.edgeVMm[i] as number, scale),
    [predicted, scale],
  )
  return <path className="grind-predicted" d={path} />
}

/** Points of the wanted arc and its five marks. */
const WANTED_POINTS = 61
const MARK_SHARES = [0, 0.25, 0.5, 0.75, 1] as const

interface WantedCurveProps {
  readonly running: Running
  readonly reliefMm: number
  readonly scale: CurveScale
  readonly plotPx: number
}

/** The wanted arc with its five marks. */
export const WantedCurve = ({ running, reliefMm, scale, plotPx }: WantedCurveProps) => {
  const { widthMm } = running.job.blade
  const uMm = Array.from({ length: WANTED_POINTS }, (_, i) => widthMm * (i / (WANTED_POINTS - 1) - 0.5))
  const y = (share: number) => scale.topPx + wantedAt(widthMm * (share - 0.5), widthMm, reliefMm) * scale.depthPxPerMm
  return (
    <g>
      <path className="grind-wanted" d={curvePath(uMm, (i) => wantedAt(uMm[i] as number, widthMm, reliefMm), scale)} />
      {MARK_SHARES.map((share) => (
        <path key={share} className="wanted-mark" d={`M${share * plotPx} ${y(share) - 6}l6 6l-6 6l-6 -6Z`} />
      ))}
    </g>
  )
}

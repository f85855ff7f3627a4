import { useMemo, useRef } from 'react'
import type { GrindReport } from '../../geometry/report.ts'
import { type Paired, useEachEdge } from './compare/useEachEdge.ts'
import { acrossPx, addEdge, type CurveScale, curvePath, drawEdge, wantedAt } from './curves.ts'
import { setSpan, usePointRow } from './pointRow.ts'
import { firstTouching, lastTouching } from './touching.ts'
import type { Running } from './useLiveGrind.ts'

interface NowCurveProps {
  readonly running: Running
  readonly scale: CurveScale
  readonly heightPx: number
  /** Lifted off the wheel: nothing touches. */
  readonly lifted: boolean
  /** The moment that another grind is compared at, which the curve then keeps to. */
  readonly paired?: Paired | undefined
}

/** The edge as it is, the iron below it, and where the wheel touches it. */
export const NowCurve = ({ running, scale, heightPx, lifted, paired }: NowCurveProps) => {
  const line = usePointRow<SVGPolylineElement>()
  const body = usePointRow<SVGPolygonElement>()
  const touch = usePointRow<SVGPolylineElement>()
  const shade = useRef<SVGRectElement>(null)
  const { uMm } = running.shape
  useEachEdge(running, paired, (vMm, pressureNPerMm, shape) => {
    const last = uMm.length - 1
    drawEdge(line, vMm, shape, scale, 0, last)
    body.start()
    body.add(acrossPx(scale, uMm[0] as number), heightPx)
    addEdge(body, vMm, shape, scale, 0, last)
    body.add(acrossPx(scale, uMm[last] as number), heightPx)
    body.end()
    const from = lifted ? -1 : firstTouching(pressureNPerMm)
    const to = from < 0 ? -2 : lastTouching(pressureNPerMm)
    drawEdge(touch, vMm, shape, scale, from, to)
    const fromPx = from < 0 ? 0 : acrossPx(scale, uMm[from] as number)
    setSpan(shade.current, fromPx, from < 0 ? 0 : acrossPx(scale, uMm[to] as number) - fromPx)
  })
  return (
    <g>
      <rect ref={shade} className="grind-touch-shade" y={0} height={heightPx} />
      <polygon ref={body.ref} className="grind-now-body" />
      <polyline ref={line.ref} className="grind-now-line" />
      <polyline ref={touch.ref} className="grind-now-touch" />
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

import { useMemo } from 'react'
import { useApp } from '../../app/store.ts'
import { Square } from '../../glass/Glass.tsx'
import { lineOf, type Place } from '../../glass/glassLayout.ts'
import { MeasuredKey } from '../../glass/Legend.tsx'
import { useReadings } from '../../measure/useReadings.ts'
import { shortDate } from '../../ui/dates.ts'
import { useTexts } from '../../ui/texts.tsx'
import type { CurveScale } from '../curves.ts'
import { type Measured, measuredOf } from './measured.ts'

/** @returns what the bench log has measured of this tool's edge */
export const useMeasured = (): Measured | null => {
  const report = useApp((app) => app.report)
  const toolId = useApp((app) => app.tool?.id ?? '')
  const readings = useReadings(toolId)
  return useMemo(() => (report && readings ? measuredOf(report, readings) : null), [report, readings])
}

interface MeasuredEdgeProps {
  readonly measured: Measured
  readonly scale: CurveScale
}

/** Measured places as squares with whiskers, and the curve through them. */
export const MeasuredEdge = ({ measured: { curve }, scale }: MeasuredEdgeProps) => {
  const y = (depthMm: number) => scale.topPx + depthMm * scale.depthPxPerMm
  const place = (uMm: number, depthMm: number): Place => [(uMm - scale.leftMm) * scale.acrossPxPerMm, y(depthMm)]
  return (
    <g className="grind-measured">
      {curve.line && (
        <path
          className="measured-line"
          data-taken="true"
          d={lineOf(curve.line.map(([uMm, depthMm]) => place(uMm, depthMm)))}
        />
      )}
      {curve.marks.map(({ uMm, leastMm, mostMm }) => {
        const [x, fromY] = place(uMm, leastMm)
        return <Square key={uMm} xPx={x} yPx={fromY} toPx={y(mostMm)} />
      })}
    </g>
  )
}

/** What the squares are. */
export const MeasuredLegend = ({ measured: { line } }: { readonly measured: Measured }) => {
  const t = useTexts()
  const word = line.stage === 'asHoned' ? 'views:glass.measuredHoned' : 'views:glass.measured'
  return (
    <p className="grind-view-line measured-legend-line">
      <MeasuredKey /> <span className="measured-word">{t(word, { date: shortDate(line.at) })}</span>
    </p>
  )
}

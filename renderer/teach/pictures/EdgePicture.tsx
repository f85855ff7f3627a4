import { useRef } from 'react'
import { planOf } from '../../../geometry/aim.ts'
import type { LessonState } from '../../../geometry/lesson/state.ts'
import { BARS_PX, glassLayout, lineOf } from '../../glass/glassLayout.ts'
import { ScaleCaption } from '../../glass/ScaleCaption.tsx'
import { ScaleBar } from '../../ui/ScaleBar.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useBox } from '../../ui/useBox.ts'
import { useFigures } from '../../ui/useFigure.ts'
import '../../plan/drawings.css'

const BEFORE = { widthPx: 600, heightPx: 260 }
const CURVE_PX = 180
const LEAST_WIDTH_PX = 288

/** The wanted edge magnified, with a straightedge lying evenly on its crown. */
export const EdgePicture = ({ state: { job } }: { readonly state: LessonState }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const paper = useRef<HTMLElement>(null)
  const roomPx = Math.max(LEAST_WIDTH_PX, useBox(paper, BEFORE).widthPx)
  const plan = planOf(job)
  if (!plan.ok) return null
  const edges = { widthMm: job.blade.widthMm, wanted: plan.value, predicted: null, measured: null }
  const layout = glassLayout(edges, roomPx, CURVE_PX)
  const { leftPx, rightPx, topPx, floorPx } = layout
  const label = t('teach:edge.label', { relief: inWords(plan.value.reliefMm, 'mm', 2) })
  return (
    <figure className="teach-picture" ref={paper}>
      <svg className="drawing" width={roomPx} height={layout.heightPx} role="img" aria-label={label}>
        <path className="teach-steel" d={`${lineOf(layout.wanted)}V${floorPx}H${leftPx}Z`} />
        <path className="now" d={lineOf(layout.wanted)} />
        <path className="dimension" d={`M${leftPx - 8} ${topPx}H${rightPx + 8}`} />
        <ScaleBar xPx={roomPx - BARS_PX + 8} yPx={topPx} factor={layout.depth} mostPx={CURVE_PX} upright />
      </svg>
      <ScaleCaption heading={t('teach:edge.heading')} across={layout.across} depth={layout.depth} />
    </figure>
  )
}

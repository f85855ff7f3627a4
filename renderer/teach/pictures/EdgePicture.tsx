import { useRef } from 'react'
import { ScaleCaption } from '../../glass/ScaleCaption.tsx'
import { ScaleBar } from '../../ui/ScaleBar.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useBox } from '../../ui/useBox.ts'
import { useFigures } from '../../ui/useFigure.ts'
import type { StepProps } from '../LessonRun.tsx'
import { edgeLayout } from './edgeLayout.ts'
import { linesOf } from './edgeLines.ts'

const BEFORE = { widthPx: 600, heightPx: 260 }
const LEAST_WIDTH_PX = 288

/** The edge magnified, with what a step speaks of beside it: straightedge, the edge before honing, cap iron, nearest arc. */
export const EdgePicture = ({ step, state, findings, teaching }: StepProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const paper = useRef<HTMLElement>(null)
  const roomPx = Math.max(LEAST_WIDTH_PX, useBox(paper, BEFORE).widthPx)
  const told = step.ask?.kind === 'reach' || teaching.stage === 'told'
  const lines = linesOf(step, state, findings?.groundMm ?? null, told)
  if (!lines) return null
  const layout = edgeLayout(lines, roomPx)
  const relief = inWords(lines.reliefMm, 'mm', 2)
  return (
    <figure className="teach-picture" ref={paper}>
      <svg
        className="drawing"
        width={roomPx}
        height={layout.heightPx}
        role="img"
        aria-label={t('teach:edge.label', { relief })}
      >
        <path className="teach-steel" d={layout.body} />
        <path className="now" d={layout.edge} />
        {layout.others.map(({ kind, d }) => (
          <path key={kind} className="teach-beside" data-kind={kind} d={d} />
        ))}
        <ScaleBar {...layout.bar} factor={layout.depth} upright />
      </svg>
      <ScaleCaption heading={t('teach:edge.heading')} across={layout.across} depth={layout.depth} />
      <p className="teach-key">
        {[t('teach:edge.key.edge'), ...lines.others.map(({ kind }) => t(`teach:edge.key.${kind}`))].join(' ')}
      </p>
    </figure>
  )
}

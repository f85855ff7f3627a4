import { useRef } from 'react'
import { wantedEdge } from '../../../geometry/lesson/scene.ts'
import type { LessonState } from '../../../geometry/lesson/state.ts'
import { ScaleCaption } from '../../glass/ScaleCaption.tsx'
import { ScaleBar } from '../../ui/ScaleBar.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useBox } from '../../ui/useBox.ts'
import { useFigures } from '../../ui/useFigure.ts'
import { DigIn, Wood } from '../../wood/SectionDrawing.tsx'
import { sectionLayout } from '../../wood/sectionLayout.ts'
import { seenBy } from '../../wood/seen.ts'
import { asItLies } from '../../wood/setting.ts'
import '../../plan/drawings.css'
import '../../wood/wood.css'

const BEFORE = { widthPx: 600, heightPx: 260 }
const BELOW_PX = 220
const LEAST_WIDTH_PX = 288
/** A board wider than any iron, so that corners show what they do. */
const BOARD_MM = 150

/** The wanted edge in the wood, seen from behind the plane. */
export const WoodPicture = ({ state }: { readonly state: LessonState }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const paper = useRef<HTMLElement>(null)
  const roomPx = Math.max(LEAST_WIDTH_PX, useBox(paper, BEFORE).widthPx)
  const { job, bench } = state
  const profile = wantedEdge(job)
  const iron = {
    ...job.blade,
    backBevelDeg: 0,
    capSetbackMm: null,
    honedBevelDeg: bench.honedBevelDeg,
    dotCorner: bench.dotCorner,
  }
  const setting = { ...asItLies, leverDeg: bench.leverDeg, boardMm: BOARD_MM }
  const seen = profile && seenBy(profile, iron, { job, setUp: { bevelAngleDeg: bench.honedBevelDeg } }, setting)
  if (!seen) return null
  const layout = sectionLayout(seen, null, BOARD_MM, roomPx, BELOW_PX)
  const words = { depth: inWords(seen.depthMm, 'mm', 2), width: inWords(seen.cut.widthMm, 'mm', 1) }
  return (
    <figure className="teach-picture" ref={paper}>
      <svg
        className="drawing"
        width={roomPx}
        height={layout.heightPx}
        role="img"
        aria-label={t('wood:section.label', words)}
      >
        <Wood layout={layout} roomPx={roomPx} />
        <DigIn seen={seen} layout={layout} />
        <ScaleBar xPx={8} yPx={layout.surfacePx + 12} factor={layout.depth} mostPx={BELOW_PX} upright />
      </svg>
      <ScaleCaption heading={t('wood:section.heading')} across={layout.across} depth={layout.depth} />
    </figure>
  )
}

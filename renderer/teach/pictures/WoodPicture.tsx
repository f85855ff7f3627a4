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
import '../../wood/wood.css'

const BEFORE = { widthPx: 600, heightPx: 260 }
const BELOW_PX = 220
/** Of two pictures, one over the other, each has less room. */
const BELOW_BESIDE_PX = 110
const FOOT_PX = 24
/** Room over the board: at least for the marks of corners that dig in, at most for the top of a very round edge. */
const ABOVE_PX = { least: 32, most: 300, beside: 120 }
/** Over the highest place of the edge. */
const OVER_PX = 12
const LEAST_WIDTH_PX = 288
/** A board wider than any iron, so that corners show what they do. */
const BOARD_MM = 150

interface WoodPictureProps {
  readonly state: LessonState
  /** What is other in it than where the lesson begins; null: nothing. */
  readonly name: string | null
  readonly beside: boolean
}

/** The wanted edge in the wood, seen from behind the plane. */
export const WoodPicture = ({ state, name, beside }: WoodPictureProps) => {
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
  const belowPx = beside ? BELOW_BESIDE_PX : BELOW_PX
  const flush = sectionLayout(seen, null, BOARD_MM, roomPx, belowPx, { abovePx: 0, footPx: FOOT_PX })
  const highestPx = -Math.min(...flush.edge.map(([, y]) => y)) + OVER_PX
  const abovePx = Math.min(beside ? ABOVE_PX.beside : ABOVE_PX.most, Math.max(ABOVE_PX.least, highestPx))
  const layout = sectionLayout(seen, null, BOARD_MM, roomPx, belowPx, { abovePx, footPx: FOOT_PX })
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
        <ScaleBar xPx={8} yPx={layout.surfacePx + 12} factor={layout.depth} mostPx={belowPx} upright />
      </svg>
      <ScaleCaption heading={t('wood:section.heading')} across={layout.across} depth={layout.depth} />
      <p className="teach-key">
        {name !== null && <strong>{name}. </strong>}
        {t('teach:wood.key')}
      </p>
    </figure>
  )
}

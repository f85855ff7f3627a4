import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { acrossPx } from '../curves.ts'
import { Knob } from './Knob.tsx'
import type { StraightedgeReading } from './straightedgeReading.ts'
import { restYPx, type StraightedgeScale } from './straightedgeScale.ts'
import { useToolbox } from './toolbox.ts'
import { usePlaceWords } from './usePlaceWords.ts'

interface LeafKnobProps {
  readonly scale: StraightedgeScale
  readonly reading: StraightedgeReading
  readonly foremostMm: number
  readonly plotPx: number
}

const LEAF_PX = 14
const HOLD_PX = 26
/** A thin leaf is still drawn as a line (px). */
const THINNEST_PX = 1.5
/** One step across, of the half width. */
const STEP_SHARE = 0.05

/** The leaf in hand, where it is tried: on the steel where it goes under, across the straightedge where it does not. */
export const LeafKnob = ({ scale, reading, foremostMm, plotPx }: LeafKnobProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { leafMm, leafShare } = useToolbox()
  const half = -scale.leftMm
  const placeWords = usePlaceWords(2 * half)
  const uMm = leafShare * half
  const { rest, gapMm, goesUnder } = reading
  const x = acrossPx(scale, uMm)
  const steelPx = restYPx(scale, rest, uMm, foremostMm) + gapMm * scale.depthPxPerMm
  const thickPx = Math.max(leafMm * scale.depthPxPerMm, THINNEST_PX)
  const left = Math.min(Math.max(x - LEAF_PX / 2, 0), plotPx - LEAF_PX)
  const words = t(goesUnder ? 'tools:straightedge.leafUnder' : 'tools:straightedge.leafNot', {
    leaf: inWords(leafMm, 'mm', 2),
    place: placeWords(uMm),
  })
  return (
    <Knob
      name={t('tools:straightedge.leafPlace')}
      value={leafShare}
      min={-1}
      max={1}
      step={STEP_SHARE}
      jumps={[-1, -0.5, 0, 0.5, 1]}
      words={words}
      at={(start, dx) => Math.round((start + (2 * dx) / plotPx) / STEP_SHARE) * STEP_SHARE}
      onChange={(value) => useToolbox.setState({ leafShare: value })}
    >
      <rect className="tool-hold" x={left - 6} y={steelPx - HOLD_PX / 2} width={HOLD_PX} height={HOLD_PX} />
      <rect
        className="tool-leaf"
        data-under={goesUnder}
        x={left}
        y={steelPx - thickPx}
        width={LEAF_PX}
        height={thickPx}
      />
      <path className="tool-leaf-grip" d={`M${left + LEAF_PX / 2} ${steelPx}v14`} />
      <circle className="grind-ring" cx={left + LEAF_PX / 2} cy={steelPx + 16} r={4.5} />
    </Knob>
  )
}

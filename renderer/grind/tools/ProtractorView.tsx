import { bevelAngles } from '../../../geometry/protractor.ts'
import { bevelAtEdge } from '../../../geometry/setUp.ts'
import { degFromRad } from '../../../geometry/units.ts'
import { FigureText } from '../../ui/FigureText.tsx'
import { ScaleBar } from '../../ui/ScaleBar.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { factorText } from '../glassScale.ts'
import { OUTSIDE_PX, ViewHead } from '../Views.tsx'
import { PlaceField, useSectionPlace } from './PlaceField.tsx'
import { type DrawnAngle, protractorDrawing } from './protractorDrawing.ts'
import { sectionAt } from './steel.ts'
import type { BladeToolProps } from './ToolViews.tsx'

/** A protractor tells no finer than this (rad): a tenth of a degree. */
const TOLD_RAD = 0.1 * (Math.PI / 180)
/** Rocks less than this and nobody feels it (rad). */
const FELT_RAD = TOLD_RAD / 2

/** The bevel in section: its angle at the tip, its angle from edge to heel, and which of them a protractor finds. */
export const ProtractorView = ({ running, moment, field, plotPx }: BladeToolProps) => {
  const t = useTexts()
  const { plain, inWords } = useFigures()
  const { widthMm } = running.job.blade
  const section = sectionAt(running.shape, field, useSectionPlace())
  const angles = bevelAngles(section)
  const drawing = protractorDrawing(section, angles, plotPx)
  const deg = (rad: number) => inWords(degFromRad(rad), 'deg', 1)
  const [least, most] = angles.foundRad
  const kind =
    most - least > FELT_RAD ? 'rocks' : Math.abs(angles.chordRad - angles.tipRad) < TOLD_RAD ? 'flat' : 'hollow'
  const words = { tip: deg(angles.tipRad), chord: deg(angles.chordRad), least: deg(least), most: deg(most) }
  const wheelRad = bevelAtEdge(running.setUp, section.backMm[0] as number)
  return (
    <section className="grind-view" aria-label={t('tools:protractor.heading')}>
      <ViewHead
        heading={t('tools:protractor.heading')}
        note={t('tools:protractor.note', { factor: factorText(drawing.factor) })}
      />
      <svg
        width={plotPx + OUTSIDE_PX}
        height={drawing.heightPx}
        className="grind-plot tool-drawing"
        role="img"
        aria-label={t('tools:protractor.label', words)}
      >
        <path className="tool-steel" d={drawing.steel} />
        <path className="tool-body" d={drawing.arm} />
        <path className="tool-body" d={drawing.base} />
        <path className="tool-edge" d={drawing.bevel} />
        <Angle drawn={drawing.tip} kind="tip" words={t('tools:protractor.tipWords', words)} />
        <Angle drawn={drawing.chord} kind="chord" words={t('tools:protractor.chordWords', words)} />
        <ScaleBar xPx={plotPx + 4} yPx={drawing.heightPx - 12} factor={drawing.factor} mostPx={44} />
      </svg>
      <div className="tools-row">
        <FigureText figure={plain(degFromRad(angles.tipRad), 'deg', 1)} name={t('tools:protractor.tip')} />
        <FigureText figure={plain(degFromRad(angles.chordRad), 'deg', 1)} name={t('tools:protractor.chord')} />
        <FigureText figure={plain(degFromRad(wheelRad), 'deg', 1)} name={t('tools:protractor.wheel')} size="small" />
      </div>
      <PlaceField widthMm={widthMm} />
      <p className="tools-found" role="status" aria-live={moment.playing ? 'off' : 'polite'}>
        {t(`tools:protractor.finds.${kind}`, words)}
      </p>
    </section>
  )
}

interface AngleProps {
  readonly drawn: DrawnAngle
  readonly kind: 'tip' | 'chord'
  readonly words: string
}

const Angle = ({ drawn, kind, words }: AngleProps) => (
  <g className="tool-angle" data-kind={kind}>
    <path d={drawn.line} />
    <path d={drawn.arc} />
    <text x={drawn.words[0]} y={drawn.words[1]}>
      {words}
    </text>
  </g>
)

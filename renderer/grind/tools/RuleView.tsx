import { plainly } from '../../../main/contract/figures.ts'
import { FigureText } from '../../ui/FigureText.tsx'
import { Options } from '../../ui/Options.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { ViewHead } from '../Views.tsx'
import { PlaceField, useSectionPlace } from './PlaceField.tsx'
import { RuleDrawing } from './RuleDrawing.tsx'
import { endsOn, marksOn, placeOf, type RuleLineName, ruleLineNames } from './ruleLines.ts'
import { finestDrawnMm, graduationMm, ruleReadsMm, ruleScale } from './ruleScale.ts'
import { edgeOfField, sectionAt } from './steel.ts'
import type { BladeToolProps } from './ToolViews.tsx'
import { useToolbox } from './toolbox.ts'

/** Room that the ends of the rule take outside the line (px). */
const ENDS_PX = 40
/** Decimals of a length as the model has it, and as a rule reads it. */
const MODEL_DECIMALS = 2
const RULE_DECIMALS = 1

/** A factor of the series, without dust. */
const rounded = (factor: number): string => plainly(Number(factor.toPrecision(3)))

/** A rule laid between two things: it reads to half a millimetre, and shows what it cannot see. */
export const RuleView = ({ running, moment, field, plotPx }: BladeToolProps) => {
  const t = useTexts()
  const figures = useFigures()
  const { ruleLine, ruleEnds } = useToolbox()
  const { widthMm } = running.job.blade
  const section = sectionAt(running.shape, field, useSectionPlace())
  const marks = marksOn(ruleLine, { setUp: running.setUp, edge: edgeOfField(running.shape, field), section })
  const ends = endsOn(ruleLine, ruleEnds[ruleLine])
  const [fromMm, toMm] = [placeOf(ends[0], marks), placeOf(ends[1], marks)]
  const lengthMm = Math.abs(toMm - fromMm)
  const readsMm = ruleReadsMm(lengthMm, figures.lengthUnit)
  const scale = ruleScale(Math.max(...marks.map(({ mm }) => mm)), plotPx - ENDS_PX)
  const finestMm = graduationMm(figures.lengthUnit)
  const drawnMm = finestDrawnMm(scale.pxPerMm, figures.lengthUnit)
  const sees = lengthMm > 0 && readsMm === 0 ? 'nothing' : 'length'
  const words = {
    reads: figures.inWords(readsMm, 'mm', RULE_DECIMALS),
    length: figures.inWords(lengthMm, 'mm', MODEL_DECIMALS),
    finest: figures.inWords(finestMm, 'mm', RULE_DECIMALS),
    drawn: figures.inWords(drawnMm, 'mm', RULE_DECIMALS),
  }
  return (
    <section className="grind-view" aria-label={t('tools:rule.heading')}>
      <ViewHead
        heading={t('tools:rule.heading')}
        note={t(drawnMm > finestMm ? 'tools:rule.noteCoarse' : 'tools:rule.note', {
          factor: rounded(scale.factor),
          ...words,
        })}
      />
      <Options
        legend={t('tools:rule.lay')}
        hideLegend
        options={ruleLineNames.map((value) => ({ value, name: t(`tools:rule.lines.${value}`) }))}
        value={ruleLine}
        onChoose={(value: RuleLineName) => useToolbox.setState({ ruleLine: value })}
      />
      <RuleDrawing marks={marks} ends={ends} scale={scale} plotPx={plotPx} />
      <div className="tools-row">
        <FigureText figure={figures.plain(readsMm, 'mm', RULE_DECIMALS)} name={t('tools:rule.reads')} />
        <FigureText figure={figures.plain(lengthMm, 'mm', MODEL_DECIMALS)} name={t('tools:rule.model')} size="small" />
      </div>
      {ruleLine === 'bevel' && <PlaceField widthMm={widthMm} />}
      <p className="tools-found" role="status" aria-live={moment.playing ? 'off' : 'polite'}>
        {t(`tools:rule.sees.${sees}`, words)}
      </p>
    </section>
  )
}

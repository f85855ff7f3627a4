import { useMemo } from 'react'
import type { SteelLine } from '../../../geometry/straightedge.ts'
import { useApp } from '../../app/store.ts'
import { useBench } from '../../measure/bench.ts'
import { Options } from '../../ui/Options.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { factorText } from '../glassScale.ts'
import { ViewHead } from '../Views.tsx'
import { LeafKeys } from './LeafKeys.tsx'
import { StraightedgeDrawing } from './StraightedgeDrawing.tsx'
import { Found } from './StraightedgeFound.tsx'
import { edgeOfField } from './steel.ts'
import { readStraightedge, widestGapeMm } from './straightedgeReading.ts'
import { straightedgeScale } from './straightedgeScale.ts'
import type { BladeToolProps } from './ToolViews.tsx'
import { useToolbox } from './toolbox.ts'

/** An edge that is to stay straight is still drawn in some depth (mm). */
const LEAST_GAPE_MM = 0.05

/** The widest gape there is, or that the grind is predicted to leave (mm). */
const useGape = (...edges: readonly SteelLine[]): number => {
  const ground = useApp((app) => app.report?.grind ?? null)
  // Lists of one kind: what looks at every frame's edge would else make a number of each place of it.
  const predicted = useMemo(
    () => (ground ? [{ atMm: Float64Array.from(ground.edgeUMm), backMm: Float64Array.from(ground.edgeVMm) }] : []),
    [ground],
  )
  return Math.max(LEAST_GAPE_MM, ...[...edges, ...predicted].map(widestGapeMm))
}

const presses = [
  { value: '-1', name: 'left' },
  { value: '0', name: 'balanced' },
  { value: '1', name: 'right' },
] as const

/** A straightedge on the edge: it rocks as it would at the bench, and leaves go under it or do not. */
export const StraightedgeView = ({ running, moment, field, plotPx }: BladeToolProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { press, leafMm, leafShare } = useToolbox()
  const stepMm = useBench((bench) => bench.stepsMm.leaves)
  const { widthMm } = running.job.blade
  const edge = edgeOfField(running.shape, field)
  const gapeMm = useGape(edge, edgeOfField(running.shape, running.shape.vStartMm))
  const scale = straightedgeScale(widthMm, gapeMm, plotPx)
  const reading = readStraightedge(edge, { press, leafMm, leafShare, stepMm })
  return (
    <section className="grind-view" aria-label={t('tools:straightedge.heading')}>
      <ViewHead
        heading={t('tools:straightedge.heading')}
        note={t('views:factors', { across: factorText(scale.acrossFactor), depth: factorText(scale.depthFactor) })}
      />
      <StraightedgeDrawing running={running} scale={scale} reading={reading} edge={edge} plotPx={plotPx} />
      <p className="grind-view-line">{t('tools:straightedge.set', { step: inWords(stepMm, 'mm', 2) })}</p>
      <Found edge={edge} reading={reading} still={!moment.playing} />
      <div className="tools-row">
        <Options
          legend={t('tools:straightedge.press')}
          options={presses.map(({ value, name }) => ({ value, name: t(`tools:straightedge.presses.${name}`) }))}
          hideLegend
          value={presses.find(({ value }) => Number(value) === press)?.value ?? null}
          onChoose={(value) => useToolbox.setState({ press: Number(value) })}
        />
        <LeafKeys stepMm={stepMm} reading={reading} widthMm={widthMm} />
      </div>
    </section>
  )
}

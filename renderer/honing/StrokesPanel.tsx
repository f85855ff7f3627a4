import { useMemo } from 'react'
import { type Profile, profileOf } from '../../geometry/profile.ts'
import type { Report } from '../../geometry/report.ts'
import { countOf, hone, middleOnly, reliefOf, type Strokes } from '../../geometry/strokes.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { Glass } from '../glass/Glass.tsx'
import { PredictedKey } from '../glass/Legend.tsx'
import { shortDate } from '../ui/dates.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { KnownEdge } from '../wood/edges.ts'
import { changeHoning, useHoning } from './setting.ts'

interface StrokesPanelProps {
  readonly tool: Tool
  readonly report: Report
  readonly edges: readonly KnownEdge[]
}

/** Enough points for strokes; more only take longer. */
const POINTS = 60
const CURVE_PX = 150

/** The same edge by fewer points. */
const thinned = ({ uMm, behindMm }: Profile): Profile => {
  const every = Math.max(1, Math.floor((uMm.length - 1) / POINTS))
  const kept = (_: number, i: number) => i % every === 0 || i === uMm.length - 1
  return profileOf(uMm.filter(kept), behindMm.filter(kept))
}

/** Strokes at five places, and the edge that they leave. */
export const StrokesPanel = ({ tool, report, edges }: StrokesPanelProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { edge: key, strokes, setBackMm } = useHoning(tool.id)
  const edge = edges.find((each) => each.key === key) ?? (edges[0] as KnownEdge)
  const before = useMemo(() => thinned(edge.profile), [edge.profile])
  const after = useMemo(() => hone(before, strokes, setBackMm).profile, [before, strokes, setBackMm])
  const flattened = useMemo(() => hone(before, middleOnly(strokes), setBackMm).profile, [before, strokes, setBackMm])
  const length = (mm: number) => inWords(mm, 'mm', 2)
  const words = {
    before: length(reliefOf(before)),
    after: length(reliefOf(after)),
    middle: length(reliefOf(flattened)),
  }
  const verdict = verdictOf(reliefOf(before), reliefOf(after))
  return (
    <section className="honing-strokes" aria-label={t('honing:strokes.heading')}>
      <div>
        <h2>{t('honing:strokes.heading')}</h2>
        <Options
          legend={t('honing:strokes.edge')}
          options={edges.map((each) => ({
            value: each.key,
            name: t(`wood:edge.${each.key}`, { date: each.line ? shortDate(each.line.at) : '' }),
          }))}
          value={edge.key}
          onChoose={(value) => changeHoning(tool.id, { edge: value })}
        />
        <StrokeFields tool={tool} strokes={strokes} />
        <p className="sentence" role="status">
          {t(`honing:strokes.${verdict}`, { ...words, count: countOf(strokes) })}
        </p>
        <p>{t('honing:strokes.middleOnly', words)}</p>
        <p className="muted">{t('honing:strokes.model')}</p>
      </div>
      <Glass
        edges={{
          widthMm: tool.widthMm,
          wanted: report.plan,
          predicted: { edgeUMm: after.uMm, edgeVMm: after.behindMm },
          measured: { marks: [], taken: false, line: before.uMm.map((u, i) => [u, before.behindMm[i] as number]) },
        }}
        dot={tool.dotCorner}
        curvePx={CURVE_PX}
        heading={t('honing:strokes.glass')}
        label={t('honing:strokes.label', words)}
      >
        <p className="glass-legend">
          {t('honing:strokes.beforeKey', words)}
          <br />
          <PredictedKey /> <span className="predicted-word">{t('honing:strokes.afterKey', words)}</span>
        </p>
      </Glass>
    </section>
  )
}

/** Within a tenth the curve is kept. */
const KEPT_SHARE = 0.1
/** Below this no leaf tells a curve (mm). */
const NO_CURVE_MM = 0.005

const verdictOf = (before: number, after: number): 'kept' | 'flatter' | 'deeper' => {
  if (Math.abs(after - before) < Math.max(KEPT_SHARE * before, NO_CURVE_MM)) return 'kept'
  return after < before ? 'flatter' : 'deeper'
}

const StrokeFields = ({ tool, strokes }: { readonly tool: Tool; readonly strokes: Strokes }) => {
  const t = useTexts()
  const field = (key: keyof Strokes) => (
    <FigureField
      quantity="honing.strokes"
      label={t(`honing:strokes.at.${key}`)}
      value={strokes[key]}
      onCommit={(value) =>
        value !== null && changeHoning(tool.id, { strokes: { ...strokes, [key]: Math.round(value) } })
      }
    />
  )
  return (
    <div className="honing-fields">
      {field('corner')}
      {field('halfway')}
      {field('middle')}
    </div>
  )
}

import { useMemo } from 'react'
import { type Profile, profileOf, profileReliefMm } from '../../geometry/profile.ts'
import type { Report } from '../../geometry/report.ts'
import { countOf, hone, KEEPS, middleOnly, type Strokes } from '../../geometry/strokes.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { Glass } from '../glass/Glass.tsx'
import { LineKey, PredictedKey, WantedKey } from '../glass/Legend.tsx'
import { shortDate } from '../ui/dates.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { KnownEdge } from '../wood/edges.ts'
import { changeHoning, useHoning } from './setting.ts'
import { verdictOf } from './verdict.ts'

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
    before: length(profileReliefMm(before)),
    after: length(profileReliefMm(after)),
    middle: length(profileReliefMm(flattened)),
    wanted: length(report.plan.reliefMm),
  }
  const verdict = verdictOf(profileReliefMm(before), profileReliefMm(after))
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
        {verdict !== 'straight' && <p>{t('honing:strokes.middleOnly', words)}</p>}
        <p className="muted">
          {t('honing:strokes.model', { least: length(KEEPS.leastReliefMm), most: length(KEEPS.mostSetBackMm) })}
        </p>
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
          <LineKey /> <span className="measured-word">{t('honing:strokes.beforeKey', words)}</span>
          <br />
          <PredictedKey /> <span className="predicted-word">{t('honing:strokes.afterKey', words)}</span>
          <br />
          <WantedKey /> <span className="wanted-word">{t('honing:strokes.wantedKey', words)}</span>
        </p>
      </Glass>
    </section>
  )
}

const StrokeFields = ({ tool, strokes }: { readonly tool: Tool; readonly strokes: Strokes }) => {
  const t = useTexts()
  const field = (key: keyof Strokes) => (
    <FigureField
      quantity="honing.strokes"
      label={t(`honing:strokes.at.${key}`)}
      value={strokes[key]}
      onCommit={(value) => value !== null && changeHoning(tool.id, { strokes: { ...strokes, [key]: value } })}
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

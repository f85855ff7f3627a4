import { useRef, useState } from 'react'
import { measureOf } from '../../main/contract/barMeasure.ts'
import { plainly } from '../../main/contract/figures.ts'
import { useApp } from '../app/store.ts'
import { PX_PER_MM } from '../ui/scale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useFigures } from '../ui/useFigure.ts'
import { type IronMark, ironMarks, ruleMarks, SAME_MM } from './ironMarks.ts'
import { MarkOnRule, NamedIrons } from './MarkOnRule.tsx'
import { labelledMarks } from './ruleLabels.ts'
import type { Standing } from './SetUpScreen.tsx'

const BEFORE = { widthPx: 1200, heightPx: 120 }
const MARGIN_PX = 24
const MOST_ROWS = 6
const ROW_PX = 18
/** Between the lowest row and the rule (px). */
const APART_PX = 4
const RULE_PX = 26
const TICK_MM = 10
/** Ends of the rule beyond its outermost marks (mm). */
const BEYOND_MM = 8
/** Room for the label of the last mark, beyond the rule's end (px). */
const LAST_LABEL_PX = 40
const SCALES = [8, 5, 3, 2, 1.5, 1, 0.75, 0.5, 0.25] as const

/** A rule of projections on which every iron of the rack has its mark, for the bar as it stands. */
export const IronRule = ({ standing }: { readonly standing: Standing }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const paper = useRef<HTMLDivElement>(null)
  const named = useRef<HTMLUListElement>(null)
  const roomPx = useBox(paper, BEFORE).widthPx
  const tools = useApp((app) => app.tools)
  const inHandId = useApp((app) => app.tool?.id ?? null)
  const [pointedId, point] = useState<string | null>(null)
  const irons = ironMarks(standing.job, standing.figures.barDistanceMm, tools)
  const marks = ruleMarks(irons, inHandId)
  const { from, to, scale, xPx } = scaled(
    [standing.figures.projectionMm, ...marks.map((mark) => mark.projectionMm)],
    roomPx,
  )
  const say = (codes: readonly string[], more: number) =>
    more === 0 ? codes.join(', ') : t('setUp:rule.more', { codes: codes.join(', '), more })
  const labelled = labelledMarks(marks, { rows: MOST_ROWS, endPx: roomPx, xPx, say })
  const rows = 1 + Math.max(0, ...labelled.map(({ row }) => row ?? 0))
  const topPx = rows * ROW_PX + APART_PX
  const holding = (id: string | null) => labelled.find((mark) => mark.irons.some(({ tool }) => tool.id === id))
  return (
    <section className="iron-rule" aria-label={t('setUp:rule.heading')}>
      <h2>{t('setUp:rule.heading')}</h2>
      <p className="muted">{t('setUp:rule.how', { scale: plainly(scale), within: inWords(SAME_MM, 'mm', 1) })}</p>
      <div className="rule-paper" ref={paper} style={{ height: topPx + RULE_PX }}>
        <svg className="drawing" width={roomPx} height={topPx + RULE_PX} aria-hidden="true">
          <Rule from={from} to={to} xPx={xPx} topPx={topPx} />
        </svg>
        {labelled.map((mark) => (
          <MarkOnRule
            key={mark.irons.map(({ tool }) => tool.id).join()}
            mark={mark}
            topPx={mark.row === null ? null : (rows - 1 - mark.row) * ROW_PX}
            endPx={topPx}
            strong={mark === holding(inHandId)}
            onPoint={point}
            onOpen={() => named.current?.querySelector('a')?.focus()}
          />
        ))}
      </div>
      <NamedIrons irons={holding(pointedId)?.irons ?? holding(inHandId)?.irons.slice(0, 1) ?? []} list={named} />
      <Without standing={standing} irons={irons.filter(({ projectionMm }) => projectionMm === null)} />
    </section>
  )
}

/** The rule from a little before the least of its figures to a little beyond the greatest, as large as there is room for. */
const scaled = (projectionsMm: readonly number[], roomPx: number) => {
  const from = Math.min(...projectionsMm) - BEYOND_MM
  const to = Math.max(...projectionsMm) + BEYOND_MM
  const most = roomPx - 2 * MARGIN_PX - LAST_LABEL_PX
  const scale = SCALES.find((each) => (to - from) * each * PX_PER_MM <= most) ?? (SCALES.at(-1) as number)
  return { from, to, scale, xPx: (mm: number) => MARGIN_PX + (mm - from) * scale * PX_PER_MM }
}

interface WithoutProps {
  readonly standing: Standing
  readonly irons: readonly IronMark[]
}

/** The irons that cannot be ground so, and the bar as this station measures it. */
const Without = ({ standing: { job, figures }, irons }: WithoutProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const measure = useApp((app) => app.station?.barMeasure ?? 'gap')
  const place = useApp((app) => app.station?.barPlace ?? 'above')
  if (irons.length === 0) return null
  return (
    <p className="muted">
      {t(`setUp:rule.without.${place}.${measure}`, {
        irons: irons.map(({ tool }) => tool.code).join(', '),
        bar: inWords(measureOf(measure, job.station, figures.barDistanceMm), 'mm', 1),
      })}
    </p>
  )
}

interface RuleProps {
  readonly from: number
  readonly to: number
  readonly xPx: (mm: number) => number
  readonly topPx: number
}

const Rule = ({ from, to, xPx, topPx }: RuleProps) => {
  const first = Math.ceil(from)
  const millimetres = Array.from({ length: Math.floor(to) - first + 1 }, (_, k) => first + k)
  return (
    <>
      <rect className="rule-body" x={xPx(from)} y={topPx} width={xPx(to) - xPx(from)} height={RULE_PX} />
      <path
        className="rule-ticks"
        d={millimetres.map((mm) => `M${xPx(mm)} ${topPx}v${mm % TICK_MM === 0 ? 12 : mm % 5 === 0 ? 8 : 5}`).join('')}
      />
      {millimetres
        .filter((mm) => mm % TICK_MM === 0)
        .map((mm) => (
          <text key={mm} className="on-rule" x={xPx(mm)} y={topPx + RULE_PX - 2} textAnchor="middle">
            {mm}
          </text>
        ))}
    </>
  )
}

import { useRef } from 'react'
import { hashFor } from '../app/route.ts'
import { useApp } from '../app/store.ts'
import { PX_PER_MM } from '../ui/scale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useFigures } from '../ui/useFigure.ts'
import { ironMarks, labelledMarks, type MarkLabel } from './ironMarks.ts'
import type { Standing } from './SetUpScreen.tsx'

const BEFORE = { widthPx: 1200, heightPx: 120 }
const MARGIN_PX = 24
const LABEL_PX = 30
const ROWS = 6
const ROW_PX = 18
const RULE_PX = 26
const TICK_MM = 10
/** Ends of the rule beyond its outermost marks (mm). */
const BEYOND_MM = 8
const SCALES = [3, 2, 1.5, 1, 0.75, 0.5, 0.25] as const

/** A rule of projections on which every iron of the rack has its mark, for the bar as it stands. */
export const IronRule = ({ standing: { job, figures } }: { readonly standing: Standing }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const paper = useRef<HTMLElement>(null)
  const roomPx = useBox(paper, BEFORE).widthPx
  const tools = useApp((app) => app.tools)
  const inHand = useApp((app) => app.tool?.id ?? null)
  const marks = ironMarks(job, figures.barDistanceMm, tools)
  const standingAt = marks.flatMap(({ projectionMm }) => (projectionMm === null ? [] : [projectionMm]))
  const without = marks.filter(({ projectionMm }) => projectionMm === null)
  const from = Math.min(figures.projectionMm, ...standingAt) - BEYOND_MM
  const to = Math.max(figures.projectionMm, ...standingAt) + BEYOND_MM
  const scale = SCALES.find((each) => (to - from) * each * PX_PER_MM <= roomPx - 2 * MARGIN_PX) ?? 0.25
  const xPx = (mm: number) => MARGIN_PX + (mm - from) * scale * PX_PER_MM
  const labels = labelledMarks(marks, xPx, LABEL_PX, ROWS)
  const heightPx = ROWS * ROW_PX + RULE_PX + 28
  return (
    <section className="iron-rule" aria-label={t('setUp:rule.heading')} ref={paper}>
      <h2>{t('setUp:rule.heading')}</h2>
      <p className="muted">{t('setUp:rule.how', { scale: scale.toString() })}</p>
      <svg className="drawing" width={roomPx} height={heightPx}>
        <title>{t('setUp:rule.heading')}</title>
        <Rule from={from} to={to} xPx={xPx} topPx={ROWS * ROW_PX + 4} />
        {labels.map((label) => (
          <Mark key={label.tool.id} label={label} strong={label.tool.id === inHand} />
        ))}
      </svg>
      {without.length > 0 && (
        <p className="muted">
          {t('setUp:rule.without', {
            irons: without.map(({ tool }) => tool.code).join(', '),
            bar: inWords(figures.gapMm, 'mm', 1),
          })}
        </p>
      )}
    </section>
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

/** A mark is a link: it takes that iron in hand. */
const Mark = ({ label, strong }: { readonly label: MarkLabel; readonly strong: boolean }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { tool, xPx, row, projectionMm } = label
  const words = t('setUp:rule.mark', {
    code: tool.code,
    name: tool.name,
    projection: inWords(projectionMm, 'mm', 1),
    bevel: inWords(tool.bevelAngleDeg, 'deg', 1),
  })
  const baseline = (ROWS - 1 - (row ?? 0)) * ROW_PX + 15
  const end = ROWS * ROW_PX + 4
  return (
    <a href={hashFor('setUp', tool.code)} aria-label={words} className="rule-mark" data-strong={strong}>
      <title>{words}</title>
      <path d={`M${xPx} ${row === null ? end - 8 : baseline + 3}V${end}`} />
      {row !== null && (
        <text x={xPx + 3} y={baseline}>
          {tool.code}
        </text>
      )}
    </a>
  )
}

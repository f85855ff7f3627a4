import { useId, useRef } from 'react'
import type { Learnt, Standing } from '../../main/contract/learnt.ts'
import { lineOf, type Place } from '../glass/glassLayout.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useFigures } from '../ui/useFigure.ts'
import { useWindowHeight } from '../ui/useWindowHeight.ts'
import { type PlotLayout, plotLayout } from './plotLayout.ts'

const BEFORE = { widthPx: 720, heightPx: 400 }
const TAKEN_PX = 420
const LEAST_PX = 260
const MOST_PX = 460
const LEAST_WIDTH_PX = 280
const SPOT_PX = 9

/** Every measured grind: free play set, against free play that the edge shows; the model's line and the fixture's own. */
export const Plot = ({ learnt }: { readonly learnt: Learnt }) => {
  const t = useTexts()
  const clip = useId()
  const paper = useRef<HTMLElement>(null)
  const widthPx = Math.max(LEAST_WIDTH_PX, useBox(paper, BEFORE).widthPx)
  const heightPx = Math.min(MOST_PX, Math.max(LEAST_PX, useWindowHeight() - TAKEN_PX))
  const layout = plotLayout(learnt, widthPx, heightPx)
  const used = learnt.grinds.filter(({ standing }) => standing === 'used').length
  return (
    <figure className="learnt-plot" ref={paper}>
      <svg
        className="drawing"
        width={widthPx}
        height={heightPx}
        role="img"
        aria-label={t('learnt:plot.label', { count: learnt.grinds.length, used })}
      >
        <clipPath id={clip}>
          <rect x="0" y="0" width={widthPx} height={heightPx} />
        </clipPath>
        <Axes layout={layout} />
        <g clipPath={`url(#${clip})`}>
          {learnt.code === 'learnt' && (
            <>
              <path className="learnt-band" d={`${lineOf(layout.band)}Z`} />
              <path className="predicted-line learnt-own" d={lineOf(layout.calibrated)} />
            </>
          )}
          <path className="learnt-model" d={lineOf(layout.model)} />
          {layout.spots.map(({ grind, at }) => (
            <g key={grind.lineId}>
              <title>{`${grind.toolCode} ${grind.toolName}, ${shortDate(grind.at)}: ${t(`learnt:standing.${grind.standing}`)}`}</title>
              <Spot at={at} standing={grind.standing} />
            </g>
          ))}
        </g>
        {learnt.code === 'learnt' && <Lash layout={layout} lashMm={learnt.calibration.lashMm} />}
      </svg>
      <figcaption>
        <strong>{t('learnt:plot.heading')}</strong>
        <ul className="learnt-legend">
          <Key standing="used" />
          {(['outlier', 'excluded', 'unequal', 'noFreePlay'] as const)
            .filter((standing) => learnt.grinds.some((grind) => grind.standing === standing))
            .map((standing) => (
              <Key key={standing} standing={standing} />
            ))}
          <li>
            <svg width="36" height="12" aria-hidden="true">
              <path className="learnt-model" d="M0 6h36" />
            </svg>
            {t('learnt:plot.model')}
          </li>
          {learnt.code === 'learnt' && (
            <li>
              <svg width="36" height="12" aria-hidden="true">
                <path className="predicted-line learnt-own" d="M0 6h36" />
              </svg>
              <span className="predicted-word">{t('learnt:plot.own')}</span>
            </li>
          )}
        </ul>
      </figcaption>
    </figure>
  )
}

const Key = ({ standing }: { readonly standing: Standing }) => {
  const t = useTexts()
  return (
    <li>
      <svg width="16" height="16" aria-hidden="true">
        <Spot at={[8, 8]} standing={standing} />
      </svg>
      {t(`learnt:standing.${standing}`)}
    </li>
  )
}

/** Filled: used; a cross through it: an outlier; hollow: left out. */
const Spot = ({ at: [x, y], standing }: { readonly at: Place; readonly standing: Standing }) => (
  <>
    <rect
      className={standing === 'used' ? 'measured-square' : 'learnt-hollow'}
      x={x - SPOT_PX / 2}
      y={y - SPOT_PX / 2}
      width={SPOT_PX}
      height={SPOT_PX}
    />
    {standing === 'outlier' && (
      <path className="learnt-cross" d={`M${x - 7} ${y - 7}l14 14M${x + 7} ${y - 7}l-14 14`} />
    )}
  </>
)

/** The lash on the line of no relief, with its name below. */
const Lash = ({ layout: { lash, zero }, lashMm }: { readonly layout: PlotLayout; readonly lashMm: number }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  return (
    <>
      <path className="learnt-lash" d={`M${lash.fromPx} ${zero[1] - 6}v12m0-6H${lash.toPx}m0-6v12`} />
      <text x={lash.nameEndPx} y={zero[1] + 20} textAnchor="end">
        {t('learnt:plot.lash', { lash: inWords(lashMm, 'mm', 2) })}
      </text>
    </>
  )
}

const Axes = ({ layout }: { readonly layout: PlotLayout }) => {
  const t = useTexts()
  const { plain } = useFigures()
  const { zero, ticks, widthPx, heightPx } = layout
  const { unit } = plain(0, 'mm', 1)
  return (
    <>
      <path className="learnt-axis" d={`M8 ${zero[1]}H${widthPx - 8}M${zero[0]} 8V${heightPx - 8}`} />
      {ticks.slice(1).map(({ mm, xPx, yPx }) => (
        <g key={mm}>
          <path className="learnt-axis" d={`M${xPx} ${zero[1]}v6M${zero[0]} ${yPx}h-6`} />
          <text x={xPx} y={zero[1] + 20} textAnchor="middle">
            {plain(mm, 'mm', 1).text}
          </text>
          <text x={zero[0] - 10} y={yPx + 5} textAnchor="end">
            {plain(mm, 'mm', 1).text}
          </text>
        </g>
      ))}
      <text x={widthPx - 8} y={zero[1] + 40} textAnchor="end">
        {t('learnt:plot.set', { unit })}
      </text>
      <text x={zero[0] + 10} y="20">
        {t('learnt:plot.shown', { unit })}
      </text>
    </>
  )
}

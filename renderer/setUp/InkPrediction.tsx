import { useMemo } from 'react'
import { type FirstInk, firstInkOf } from '../../geometry/firstInk.ts'
import { presentBevelDeg } from '../../geometry/hollow.ts'
import { JobField } from '../app/JobField.tsx'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { matchOf } from './match.ts'
import type { Standing } from './SetUpScreen.tsx'

const WIDTH_PX = 264
const HEIGHT_PX = 84

/** Where the ink will go in the first sweeps on the bevel that is there, and what to move if it should go elsewhere. */
export const InkPrediction = ({ standing }: { readonly standing: Standing }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { job, setUp, hollow, figures } = standing
  const dot = useApp((app) => app.tool?.dotCorner ?? 'left')
  const measuredDeg = job.blade.currentBevelDeg
  const currentBevelDeg = presentBevelDeg(job, setUp)
  const key = JSON.stringify([job.blade, job.station, job.fixture, job.aim, job.motion, job.errors])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts that matter are the key
  const ink = useMemo(() => firstInkOf({ ...job, blade: { ...job.blade, currentBevelDeg } }), [key])
  const compare = t('setUp:ink.compare', {
    chord: inWords(hollow.chordAngleDeg, 'deg', 1),
    tip: inWords(figures.bevelAngleDeg, 'deg', 1),
  })
  return (
    <section className="ink-prediction" aria-label={t('setUp:ink.heading')}>
      <h2>{t('setUp:ink.heading')}</h2>
      <JobField
        path="blade.currentBevelDeg"
        label={t('setUp:ink.there')}
        value={currentBevelDeg}
        change={(now, value) => ({ ...now, blade: { ...now.blade, currentBevelDeg: value } })}
      />
      <p className="muted">{measuredDeg === null ? t('setUp:ink.assumed') : compare}</p>
      {ink.ok ? (
        <>
          <BevelFace ink={ink.value} dot={dot} />
          <p>{t(`setUp:ink.${ink.value.verdict}`)}</p>
          {ink.value.verdict !== 'match' && <Advice standing={standing} currentBevelDeg={currentBevelDeg} />}
        </>
      ) : (
        <p className="muted">{t('setUp:ink.none')}</p>
      )}
    </section>
  )
}

/** The bevel's face, edge below: ink left, and bare steel where the wheel has been. */
const BevelFace = ({ ink, dot }: { readonly ink: FirstInk; readonly dot: 'left' | 'right' }) => {
  const t = useTexts()
  const { columns, verdict } = ink
  const half = columns.at(-1)?.uMm ?? 1
  const x = (u: number) => ((u / half + 1) / 2) * WIDTH_PX
  const y = (share: number) => HEIGHT_PX * (1 - share)
  const stepPx = WIDTH_PX / (columns.length - 1)
  return (
    <svg
      className="drawing ink-face"
      width={WIDTH_PX}
      height={HEIGHT_PX + 22}
      role="img"
      aria-label={t('setUp:ink.label', { verdict: t(`setUp:ink.short.${verdict}`) })}
    >
      <rect className="inked" x="0" y="0" width={WIDTH_PX} height={HEIGHT_PX} />
      {columns.map(({ uMm, from, to }) =>
        from === null || to === null ? null : (
          <rect
            key={uMm}
            className="bared"
            x={Math.max(0, x(uMm) - stepPx / 2)}
            y={y(to)}
            width={Math.min(x(uMm) + stepPx / 2, WIDTH_PX) - Math.max(0, x(uMm) - stepPx / 2)}
            height={y(from) - y(to)}
          />
        ),
      )}
      <path className="now" d={`M0 ${HEIGHT_PX}H${WIDTH_PX}`} />
      <circle className="dot" cx={dot === 'left' ? 8 : WIDTH_PX - 8} cy={HEIGHT_PX + 12} r="5" />
      <text x={WIDTH_PX / 2} y={HEIGHT_PX + 18} textAnchor="middle">
        {t('setUp:ink.edge')}
      </text>
    </svg>
  )
}

interface AdviceProps {
  readonly standing: Standing
  readonly currentBevelDeg: number
}

/** How far to move for the ink to go in the middle: the chord of the hollow is then as steep as the bevel that is there. */
const Advice = ({ standing: { job, figures }, currentBevelDeg }: AdviceProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { projectionMovesMm, barMovesMm } = matchOf(job, figures, currentBevelDeg)
  const by = (mm: number) => ({ by: inWords(Math.abs(mm), 'mm', 1) })
  const projection =
    projectionMovesMm === null
      ? null
      : t(`setUp:ink.projection.${projectionMovesMm < 0 ? 'less' : 'more'}`, by(projectionMovesMm))
  const bar = barMovesMm === null ? null : t(`setUp:ink.bar.${barMovesMm < 0 ? 'nearer' : 'further'}`, by(barMovesMm))
  if (projection && bar) return <p className="muted">{t('setUp:ink.advice', { projection, bar })}</p>
  const move = projection ?? bar
  return move && <p className="muted">{t('setUp:ink.only', { move })}</p>
}

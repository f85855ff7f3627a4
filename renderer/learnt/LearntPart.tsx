import type { Learnt } from '../../main/contract/learnt.ts'
import { NoJob } from '../app/NoJob.tsx'
import { sayProblem, useApp } from '../app/store.ts'
import { saveFixture } from '../app/storeRack.ts'
import { fixtureDraftOf } from '../rack/drafts.ts'
import { FigureText } from '../ui/FigureText.tsx'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { GrindTable } from './GrindTable.tsx'
import './learnt.css'
import { Plot } from './Plot.tsx'
import { Removal } from './Removal.tsx'
import { useLearnt } from './useLearnt.ts'

/** What the fixture in hand has learnt from its measured grinds, shown with everything it rests on. */
export const LearntPart = () => {
  const t = useTexts()
  const job = useApp((app) => app.job)
  const fixture = useApp((app) => app.fixture)
  const { learnt, removal } = useLearnt(job?.fixtureId ?? null, job?.stationId ?? null)
  if (!job || !fixture) return <NoJob />
  if (fixture.kind !== 'steered')
    return <p className="page-note">{t('learnt:notSteered', { fixture: fixture.name })}</p>
  return (
    <div className="learnt">
      <section className="learnt-head" aria-label={t('learnt:heading')}>
        <h2>{t('learnt:of', { fixture: fixture.name })}</h2>
        {learnt && <Said learnt={learnt} learning={fixture.learning} />}
        <Switch />
      </section>
      {learnt && learnt.grinds.length > 0 && (
        <div className="learnt-body">
          <Plot learnt={learnt} />
          <div className="learnt-side">
            <Figures learnt={learnt} />
            <GrindTable grinds={learnt.grinds} />
          </div>
        </div>
      )}
      <Removal removal={removal} />
    </div>
  )
}

/** Whether what was learnt corrects what is reckoned. */
const Switch = () => {
  const t = useTexts()
  const fixture = useApp((app) => app.fixture)
  if (!fixture) return null
  const choose = async (learning: 'on' | 'off') => {
    const { id, version } = fixture
    const saved = await saveFixture({ id, version }, { ...fixtureDraftOf(fixture), learning })
    if (!saved.ok && saved.problems[0]) sayProblem(saved.problems[0])
  }
  return (
    <Options
      legend={t('learnt:switch.legend')}
      options={(['on', 'off'] as const).map((value) => ({ value, name: t(`learnt:switch.${value}`) }))}
      value={fixture.learning}
      onChoose={choose}
    />
  )
}

const PERCENT = 100
/** Less than this off the model is as the model says. */
const AS_MODEL = 0.01
/** The newest grind moved the calibration enough to be told of. */
const MOVED = 0.03

const Said = ({ learnt, learning }: { readonly learnt: Learnt; readonly learning: 'on' | 'off' }) => {
  const t = useTexts()
  const { calibration, code, grinds, before } = learnt
  const off = calibration.scale - 1
  const verdict = Math.abs(off) < AS_MODEL ? 'as' : off > 0 ? 'more' : 'less'
  const percent = (share: number) => `${Math.round(Math.abs(share) * PERCENT)} %`
  const words = { by: percent(off), sure: percent(2 * calibration.scaleSe), count: calibration.grinds }
  const moved = before === null ? 0 : calibration.scale - before.scale
  const sentence =
    grinds.length === 0
      ? t('learnt:said.nothing')
      : code !== 'learnt'
        ? t(`learnt:said.${code}`, words)
        : t(`learnt:said.${verdict}`, words)
  return (
    <>
      <p className="sentence" role="status">
        {sentence} {grinds.length > 0 && code === 'learnt' && t(`learnt:used.${learning}`)}
      </p>
      {code === 'learnt' && Math.abs(moved) > MOVED && (
        <p className="caution">
          {t('learnt:said.moved', {
            from: percent((before?.scale ?? 1) - 1),
            to: percent(off),
            sign: moved > 0 ? '+' : '−',
          })}
        </p>
      )}
    </>
  )
}

const Figures = ({ learnt: { calibration } }: { readonly learnt: Learnt }) => {
  const t = useTexts()
  const figures = useFigures()
  const { scale, scaleSe, lashMm, lashSe, repeatabilityMm, grinds } = calibration
  const plusMinus = (text: string) => t('learnt:figures.se', { error: text })
  return (
    <div className="learnt-figures">
      <FigureText
        figure={{ text: `×\u2009${scale.toFixed(2)}`, unit: '' }}
        size="large"
        name={t('learnt:figures.scale')}
        note={plusMinus(scaleSe.toFixed(2))}
      />
      <FigureText
        figure={figures.plain(lashMm, 'mm', 2)}
        size="large"
        name={t('learnt:figures.lash')}
        note={plusMinus(figures.inWords(lashSe, 'mm', 2))}
      />
      <FigureText
        figure={figures.plain(repeatabilityMm, 'mm', 2)}
        size="large"
        name={t('learnt:figures.repeatability')}
        note={t('learnt:figures.grinds', { count: grinds })}
      />
    </div>
  )
}

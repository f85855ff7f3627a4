import type { Job } from '../../geometry/job.ts'
import { fixed } from '../../main/contract/figures.ts'
import type { Learnt } from '../../main/contract/learnt.ts'
import { NoJob } from '../app/NoJob.tsx'
import { sayProblem, useApp } from '../app/store.ts'
import { fixtureDraftOf } from '../rack/drafts.ts'
import { saveRecord } from '../rack/edits.ts'
import { FigureText } from '../ui/FigureText.tsx'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { GrindTable } from './GrindTable.tsx'
import './learnt.css'
import { Plot } from './Plot.tsx'
import { Removal } from './Removal.tsx'
import { useLearnt } from './useLearnt.ts'
import { playInUse, verdictAt } from './verdict.ts'

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
        {learnt && <Said learnt={learnt} learning={fixture.learning} job={job.document} />}
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
    const saved = await saveRecord('fixture', { id, version }, { ...fixtureDraftOf(fixture), learning })
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
const percent = (share: number) => `${Math.round(share * PERCENT)} %`
/** How many standard errors a doubt is told as. */
const TOLD_ERRORS = 2

interface SaidProps {
  readonly learnt: Learnt
  readonly learning: 'on' | 'off'
  readonly job: Job
}

const Said = ({ learnt, learning, job }: SaidProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { code, grinds, calibration } = learnt
  const playMm = playInUse(job, grinds)
  if (code !== 'learnt' || playMm === null) {
    const key = code === 'contradict' ? code : grinds.length === 0 ? 'nothing' : 'tooFewGrinds'
    return (
      <p className="sentence" role="status">
        {t(`learnt:said.${key}`, { count: calibration.grinds })}
      </p>
    )
  }
  const { side, byShare, errorShare, moved } = verdictAt(learnt, playMm)
  const words = { play: inWords(playMm, 'mm', 2), by: percent(byShare), sure: percent(TOLD_ERRORS * errorShare) }
  return (
    <>
      <p className="sentence" role="status">
        {t(`learnt:said.${side}`, words)} {t(`learnt:used.${learning}`)}
      </p>
      {moved && (
        <p className="caution">
          {t(`learnt:moved.${moved.key}`, { from: percent(moved.fromShare), to: percent(byShare) })}{' '}
          {t('learnt:moved.doubt')}
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
        figure={{ text: `×\u2009${fixed(scale, 2)}`, unit: '' }}
        size="large"
        name={t('learnt:figures.scale')}
        note={plusMinus(fixed(scaleSe, 2))}
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

import type { Job } from '../../geometry/job.ts'
import { sweepsOf } from '../../geometry/motion.ts'
import type { Report, TurnsReport } from '../../geometry/report.ts'
import { hashFor } from '../app/route.ts'
import { useApp } from '../app/store.ts'
import { FigureText } from '../ui/FigureText.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { countableSweeps, settableTurns, stopsMeet, withStops } from './aim.ts'
import { Cautions } from './Cautions.tsx'
import './answer.css'

interface AnswerProps {
  readonly job: Job
  readonly report: Report
}

/** The answer: how far the stops stand out, in millimetres first and turns second, and what to know of it. */
export const Answer = ({ job, report }: AnswerProps) => {
  const t = useTexts()
  const turns = report.freedom.turnsCalibrated ?? report.freedom.turnsForAim
  return (
    <section className="answer" aria-label={t('plan:answer.heading')}>
      <Sentence report={report} turns={turns} />
      <div className="answer-row">
        {turns && job.fixture.screwPitchMm !== null && <FreePlay turns={turns} pitchMm={job.fixture.screwPitchMm} />}
        {turns?.code !== 'squareFixture' && turns && <Stops job={job} turns={turns} report={report} />}
        <Cautions cautions={report.cautions} />
      </div>
    </section>
  )
}

const Sentence = ({ report, turns }: { readonly report: Report; readonly turns: TurnsReport | null }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { plan, job, freedom } = report
  const relief = inWords(plan.reliefMm, 'mm', 2)
  const asks =
    plan.woodReliefMm === null || job.blade.seatAngleDeg === null
      ? t('plan:sentence.asksFlat', { relief })
      : t('plan:sentence.asks', {
          relief,
          camber: inWords(plan.woodReliefMm, 'mm', 2),
          shaving: inWords(job.aim.shavingDepthMm, 'mm', 2),
          seat: inWords(job.blade.seatAngleDeg, 'deg', 0),
        })
  const stops = turns === null ? 'unknown' : plan.reliefMm === 0 && turns.code === 'reachable' ? 'closed' : turns.code
  return (
    <p className="sentence">
      {plan.reliefMm === 0 ? t('plan:sentence.straight') : asks}{' '}
      {t(`plan:sentence.stops.${stops}`, { count: countableSweeps(freedom.forAim?.sweeps ?? 0) })}
    </p>
  )
}

const FreePlay = ({ turns, pitchMm }: { readonly turns: TurnsReport; readonly pitchMm: number }) => {
  const t = useTexts()
  const figures = useFigures()
  const [left, right] = [settableTurns(turns.left), settableTurns(turns.right)]
  const play = (each: number) => figures.plain(each * pitchMm, 'mm', 2)
  const note = (each: number) => t('plan:answer.turns', { turns: figures.inWords(each, 'turn', 2) })
  if (left === right) {
    return (
      <FigureText
        figure={play(left)}
        size="far"
        found
        name={<strong>{t('plan:answer.each')}</strong>}
        note={note(left)}
      />
    )
  }
  return (
    <div className="answer-sides">
      <FigureText figure={play(left)} size="far" found name={t('plan:answer.left')} note={note(left)} />
      <FigureText figure={play(right)} size="far" found name={t('plan:answer.right')} note={note(right)} />
    </div>
  )
}

interface StopsProps extends AnswerProps {
  readonly turns: TurnsReport
}

/** How the stops stand and what comes of it, with the one key that sets them for the aim. */
const Stops = ({ job, report, turns }: StopsProps) => {
  const t = useTexts()
  const figures = useFigures()
  const editJob = useApp((app) => app.editJob)
  const code = useApp((app) => app.tool?.code ?? null)
  const set = stopsMeet(job, turns)
  const scheduled = job.motion.schedule.length + 1
  const now = (each: number) => figures.inWords(each, 'turn', 2)
  const stand = { left: now(job.motion.stopTurnsLeft), right: now(job.motion.stopTurnsRight) }
  return (
    <div className="answer-stops">
      <p>
        {scheduled > 1
          ? t('plan:answer.scheduled', { count: scheduled })
          : set
            ? t('plan:answer.set')
            : t('plan:answer.notSet', stand)}{' '}
        <After report={report} />
      </p>
      {set || scheduled > 1 ? (
        <a className="key key-main" href={hashFor('setUp', code)}>
          {t('plan:answer.toSetUp')}
        </a>
      ) : (
        <button
          type="button"
          className="key key-main"
          onClick={() => void editJob((each) => withStops(each, { turnsForAim: turns, forAim: report.freedom.forAim }))}
        >
          {t('plan:answer.use')}
        </button>
      )}
    </div>
  )
}

const After = ({ report: { job, grind } }: { readonly report: Report }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  return t('plan:answer.after', {
    count: sweepsOf(job),
    left: inWords(grind.reliefLeftMm, 'mm', 2),
    right: inWords(grind.reliefRightMm, 'mm', 2),
  })
}

import type { Job } from '../../geometry/job.ts'
import { explainSkew } from '../../geometry/squareness.ts'
import { NoJob } from '../app/NoJob.tsx'
import { ProblemNote } from '../app/ProblemNote.tsx'
import { useApp } from '../app/store.ts'
import { addReading } from '../app/storeRack.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { Causes } from './Causes.tsx'
import { Correction } from './Correction.tsx'
import { SquareDrawing } from './SquareDrawing.tsx'
import { changeSquare, type TakenReading, takeReading, useSquare } from './setting.ts'
import './square.css'

/** Squareness: what a square shows of the edge, what may have made it so, and what puts it right. */
export const SquarePart = () => {
  const job = useApp((app) => app.job)
  if (!job) return <NoJob />
  return (
    <div className="square">
      <div className="set-up-note">
        <ProblemNote />
      </div>
      <Squaring job={job.document} place={`${job.stationId} ${job.fixtureId}`} />
    </div>
  )
}

interface SquaringProps {
  readonly job: Job
  readonly place: string
}

const Squaring = ({ job, place }: SquaringProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { readings, wantedDeg } = useSquare(place)
  const dot = useApp((app) => app.tool?.dotCorner ?? 'left')
  const newest = readings.at(-1)
  const explained = readings.length === 0 ? null : explainSkew(readings)
  return (
    <>
      <Entry job={job} place={place} />
      <div className="square-body">
        <SquareDrawing skewDeg={newest?.skewDeg ?? 0} dot={dot} />
        <section aria-label={t('square:causes.heading')}>
          <h2>{t('square:causes.heading')}</h2>
          {newest ? (
            <p className="sentence" role="status">
              {t(
                `square:says.${Math.abs(newest.skewDeg) < newest.errorDeg ? 'square' : newest.skewDeg > 0 ? 'right' : 'left'}`,
                {
                  skew: inWords(Math.abs(newest.skewDeg), 'deg', 2),
                  error: inWords(newest.errorDeg, 'deg', 2),
                },
              )}
            </p>
          ) : (
            <p className="muted">{t('square:says.nothing')}</p>
          )}
          {explained?.ok && <Causes job={job} found={explained.value} />}
          <Readings readings={readings} place={place} />
        </section>
        <Correction job={job} skewDeg={newest?.skewDeg ?? null} wantedDeg={wantedDeg} place={place} />
      </div>
    </>
  )
}

/** The square's gap and length, how often the iron was clamped, and the key that takes the reading. */
const Entry = ({ job, place }: SquaringProps) => {
  const t = useTexts()
  const setting = useSquare(place)
  const tool = useApp((app) => app.tool)
  const jobId = useApp((app) => app.job?.id ?? null)
  const bevelDeg = useApp(
    (app) => app.report?.setUp.bevelAngleDeg ?? job.aim.bevelAngleDeg ?? tool?.bevelAngleDeg ?? 25,
  )
  const take = () => {
    const { fixture, motion, station } = job
    const steered = fixture.kind === 'steered' && fixture.screwPitchMm !== null
    takeReading(place, setting, {
      bevelDeg,
      wheelWidthMm: station.wheelWidthMm,
      guideArmMm: steered ? fixture.guideArmMm : null,
      unequalPlayMm: steered ? (motion.stopTurnsRight - motion.stopTurnsLeft) * (fixture.screwPitchMm ?? 0) : null,
    })
  }
  const keep = () => {
    if (!tool || setting.gapMm === null) return
    const { gapMm, overMm } = setting
    const relief = { reliefLeftMm: null, reliefRightMm: null, leafStepMm: null }
    void addReading(
      { toolId: tool.id, jobId, stage: 'asGround', ...relief, squareGapMm: gapMm, squareOverMm: overMm },
      tool.name,
    )
    take()
  }
  return (
    <section className="square-entry" aria-label={t('square:entry.heading')}>
      <h2>{t('square:entry.heading')}</h2>
      <FigureField
        quantity="measure.squareGapMm"
        size="large"
        value={setting.gapMm}
        allowEmpty
        onCommit={(gapMm) => changeSquare(place, { gapMm })}
      />
      <FigureField
        quantity="measure.squareOverMm"
        size="large"
        value={setting.overMm}
        onCommit={(overMm) => overMm !== null && changeSquare(place, { overMm })}
      />
      <FigureField
        quantity="square.clamping"
        size="large"
        value={setting.clamping}
        onCommit={(clamping) => clamping !== null && changeSquare(place, { clamping })}
      />
      <div className="square-keys">
        <button type="button" className="key key-main" disabled={setting.gapMm === null} onClick={take}>
          {t('square:entry.take')}
        </button>
        <button type="button" className="word" disabled={setting.gapMm === null} onClick={keep}>
          {t('square:entry.keep')}
        </button>
      </div>
      <p className="muted">{t('square:entry.how')}</p>
    </section>
  )
}

interface ReadingsProps {
  readonly readings: readonly TakenReading[]
  readonly place: string
}

const Readings = ({ readings, place }: ReadingsProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  if (readings.length === 0) return null
  return (
    <>
      <h3>{t('square:readings.heading')}</h3>
      <ol className="square-readings">
        {readings.map((reading, i) => (
          <li key={reading.id}>
            {t('square:readings.line', {
              gap: inWords(reading.gapMm, 'mm', 2),
              over: inWords(reading.overMm, 'mm', 0),
              skew: inWords(reading.skewDeg, 'deg', 2),
              bevel: inWords(reading.bevelDeg, 'deg', 0),
              clamping: reading.clamping,
            })}{' '}
            <button
              type="button"
              className="word"
              aria-label={t('square:readings.removeLabel', { row: i + 1 })}
              onClick={() => changeSquare(place, { readings: readings.filter(({ id }) => id !== reading.id) })}
            >
              {t('square:readings.remove')}
            </button>
          </li>
        ))}
      </ol>
    </>
  )
}

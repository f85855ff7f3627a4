import './squareTexts.ts'
import { explainSkew } from '../../geometry/explainSkew.ts'
import { freePlayOf } from '../../geometry/freedom.ts'
import type { Job } from '../../geometry/job.ts'
import { skewWithPlay, squared } from '../../geometry/squareness.ts'
import { NoJob } from '../app/NoJob.tsx'
import { ProblemNote } from '../app/ProblemNote.tsx'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { Causes } from './Causes.tsx'
import { Correction } from './Correction.tsx'
import { OVER_MM, overLengthMm } from './corrections.ts'
import { Earlier } from './Earlier.tsx'
import { Readings } from './Readings.tsx'
import { SquareDrawing } from './SquareDrawing.tsx'
import { SquareEntry } from './SquareEntry.tsx'
import { type TakenReading, useSquare } from './setting.ts'
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
  const { readings, wantedDeg } = useSquare(place)
  const dot = useApp((app) => app.tool?.dotCorner ?? 'left')
  const toolId = useApp((app) => app.tool?.id ?? null)
  const newest = readings.at(-1)
  const explained = readings.length === 0 ? null : explainSkew(readings)
  return (
    <>
      <SquareEntry job={job} place={place} />
      <div className="square-body">
        <SquareDrawing skewDeg={newest?.skewDeg ?? 0} dot={dot} />
        <section aria-label={t('square:causes.heading')}>
          <h2>{t('square:causes.heading')}</h2>
          {newest ? <Says reading={newest} /> : <p className="muted">{t('square:says.nothing')}</p>}
          {toolId && <Earlier job={job} place={place} toolId={toolId} />}
          {explained?.ok && <Causes job={job} readings={readings} found={explained.value} />}
          <Readings readings={readings} place={place} />
        </section>
        <Correction job={job} skewDeg={newest ? skewNow(newest, job) : null} wantedDeg={wantedDeg} place={place} />
      </div>
    </>
  )
}

/** Skew of the newest reading, with what the stops were set to since. */
const skewNow = (reading: TakenReading, job: Job): number => {
  const play = freePlayOf(job)
  const arm = job.fixture.guideArmMm
  return play === null || arm === null ? reading.skewDeg : skewWithPlay(reading, play.rightMm - play.leftMm, arm)
}

/** What the square shows in words: the edge, and the sides where both were tried. */
const Says = ({ reading }: { readonly reading: TakenReading }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { skewDeg, errorDeg, taperDeg, taperErrorDeg } = squared(reading.gapMm, reading.otherGapMm, reading.overMm)
  const edge = Math.abs(skewDeg) < errorDeg ? 'square' : skewDeg > 0 ? 'right' : 'left'
  const figures = { skew: inWords(Math.abs(skewDeg), 'deg', 2), error: inWords(errorDeg, 'deg', 2) }
  return (
    <p className="sentence" role="status">
      {t(`square:says.${edge}`, figures)}
      {taperDeg !== null && (
        <>
          {' '}
          {t(`square:sides.${Math.abs(taperDeg) < taperErrorDeg ? 'parallel' : taperDeg > 0 ? 'wider' : 'narrower'}`, {
            taper: inWords(Math.abs(taperDeg), 'deg', 2),
            error: inWords(taperErrorDeg, 'deg', 2),
            by: inWords(Math.abs(overLengthMm(taperDeg)), 'mm', 2),
            over: inWords(OVER_MM, 'mm', 0),
          })}
        </>
      )}
    </p>
  )
}

import { hollowOf } from '../../geometry/hollow.ts'
import type { Job } from '../../geometry/job.ts'
import type { HollowReport, SetUpReport } from '../../geometry/report.ts'
import { type SetUp, setUpOf, setUpReport } from '../../geometry/setUp.ts'
import { NoJob } from '../app/NoJob.tsx'
import { ProblemNote } from '../app/ProblemNote.tsx'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { foundKeyOf } from './found.ts'
import { Given, Places } from './Given.tsx'
import { InkPrediction } from './InkPrediction.tsx'
import { IronRule } from './IronRule.tsx'
import './more.css'
import './setUp.css'
import { TriangleDrawing } from './TriangleDrawing.tsx'
import { Worn } from './Worn.tsx'

/** Everything the drawing shows, from one job. */
export interface Standing {
  readonly job: Job
  readonly setUp: SetUp
  readonly figures: SetUpReport
  readonly hollow: HollowReport
}

const standingOf = (job: Job): Standing | null => {
  const setUp = setUpOf(job)
  if (!setUp.ok) return null
  const { wheelRadiusMm, bevelRad } = setUp.value
  return {
    job,
    setUp: setUp.value,
    figures: setUpReport(job, setUp.value),
    hollow: hollowOf(wheelRadiusMm, bevelRad, job.blade.thicknessMm),
  }
}

/** Set up: where projection and bar stand, in one drawing to scale. */
export const SetUpScreen = () => {
  const t = useTexts()
  const job = useApp((app) => app.job)
  const lastGood = useApp((app) => app.report?.job ?? null)
  if (!job) return <NoJob />
  const standing = standingOf(job.document) ?? (lastGood && standingOf(lastGood))
  return (
    <div className="set-up">
      <div className="set-up-note">
        <ProblemNote />
      </div>
      <div className="set-up-sheet">
        {standing && <TriangleDrawing standing={standing} />}
        <Given standing={standing} />
      </div>
      <section className="set-up-foot" aria-label={t('setUp:foot')}>
        {standing && <InWords standing={standing} />}
        <Places />
      </section>
      {standing && (
        <>
          <IronRule standing={standing} />
          <div className="set-up-more">
            <InkPrediction standing={standing} />
            <Worn standing={standing} />
          </div>
        </>
      )}
    </div>
  )
}

/** What the drawing says. */
const InWords = ({ standing }: { readonly standing: Standing }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { figures, job } = standing
  const place = useApp((app) => app.station?.barPlace ?? 'above')
  const found = foundKeyOf(job)
  const sentence = found === 'barDistanceMm' ? (`${found}.${place}` as const) : found
  return (
    <div className="in-words">
      <p className="sentence">
        {t(`setUp:sentence.${sentence}`, {
          gap: inWords(figures.gapMm, 'mm', 1),
          height: inWords(figures.barHeightMm, 'mm', 1),
          projection: inWords(figures.projectionMm, 'mm', 1),
          bevel: inWords(figures.bevelAngleDeg, 'deg', 1),
        })}
      </p>
      {place === 'inFront' && <p className="muted">{t('setUp:bar.turned')}</p>}
      <RimSpeed standing={standing} />
    </div>
  )
}

const RimSpeed = ({ standing: { job, figures } }: { readonly standing: Standing }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const rotation = useApp((app) => app.station?.rotation ?? 'intoEdge')
  return (
    <p className="muted">
      {t('setUp:wheel.speed', {
        speed: inWords(figures.rimSpeedMPerS, 'mPerS', 1),
        most: inWords(job.station.maxRimSpeedMPerS, 'mPerS', 0),
        rotation: t(`common:rotation.${rotation}`),
      })}
    </p>
  )
}

import { useState } from 'react'
import { planOf, seatSine } from '../../geometry/aim.ts'
import type { Job } from '../../geometry/job.ts'
import type { PlanReport } from '../../geometry/report.ts'
import { JobField, useProblemAt } from '../app/JobField.tsx'
import { useApp } from '../app/store.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { curveIn, withCurve } from './aim.ts'
import { isCurveKey, ridgeOf, type Way, wayOf, waysFor, withRidge, withWidth } from './ways.ts'

/** The plan of the job as it stands, at once: a report comes later, and would change a field that is being typed in. */
const planNow = (job: Job): PlanReport | null => {
  const plan = planOf(job)
  return plan.ok ? plan.value : null
}

/** Shaving width and ridges come down to a radius, and no relief is dead square. */
const saysTheSame = (asked: Way, own: Way): boolean =>
  own === 'edgeRadiusMm' ? asked === 'width' || asked === 'ridge' : own === 'square' && asked === 'reliefMm'

/** How the curve is said; what is said last is what the job keeps, in its own way. Dead square keeps the curve it put away until another tool is taken up. */
export const Curve = ({ job }: { readonly job: Job }) => {
  const t = useTexts()
  const editJob = useApp((app) => app.editJob)
  const plan = planNow(job)
  const [asked, setAsked] = useState<Way | null>(null)
  const [beforeSquare, setBeforeSquare] = useState<PlanReport | null>(null)
  const own = wayOf(job)
  const way = asked !== null && saysTheSame(asked, own) ? asked : own
  const choose = async (next: Way) => {
    if (!plan) return
    setAsked(next)
    if (next === 'square') {
      if (plan.reliefMm > 0) setBeforeSquare(plan)
      return editJob((now) => withCurve(now, 'reliefMm', 0))
    }
    const key = isCurveKey(next) ? next : 'edgeRadiusMm'
    const curve = plan.reliefMm > 0 ? plan : (beforeSquare ?? plan)
    return editJob((now) => withCurve(now, key, curveIn(curve, key)))
  }
  return (
    <div className="wanted-curve">
      {isCurveKey(way) && (
        <JobField
          key={way}
          path={`aim.${way}`}
          size="large"
          label={t(`plan:curve.${way}.name`)}
          value={job.aim[way]}
          change={(now, value) => withCurve(now, way, value)}
        />
      )}
      {way === 'width' && <Width job={job} />}
      {way === 'ridge' && <Ridge job={job} />}
      <Options
        legend={t('plan:curve.legend')}
        options={waysFor(job).map((value) => ({ value, name: t(`plan:curve.${value}.way`) }))}
        value={way}
        onChoose={choose}
      />
    </div>
  )
}

const RADIUS_PATH = 'aim.edgeRadiusMm'

const Width = ({ job }: { readonly job: Job }) => {
  const t = useTexts()
  const editJob = useApp((app) => app.editJob)
  return (
    <FigureField
      quantity="blade.widthMm"
      size="large"
      label={t('plan:curve.width.name')}
      value={planNow(job)?.shavingWidthMm ?? null}
      problem={useProblemAt(RADIUS_PATH)}
      onCommit={(value) =>
        value !== null && editJob((now) => withWidth(now, value, seatSine(job) ?? 1), { at: RADIUS_PATH })
      }
    />
  )
}

/** Passes half an iron apart, as a first thought. */
const FIRST_STEP_SHARE = 0.5

const Ridge = ({ job }: { readonly job: Job }) => {
  const t = useTexts()
  const editJob = useApp((app) => app.editJob)
  const plan = planNow(job)
  const sine = seatSine(job) ?? 1
  const [stepMm, setStepMm] = useState(Math.round(job.blade.widthMm * FIRST_STEP_SHARE))
  return (
    <div className="wanted-pair">
      <FigureField
        quantity="wood.ridgeMm"
        size="large"
        label={t('plan:curve.ridge.name')}
        value={plan && ridgeOf(plan, stepMm, sine)}
        problem={useProblemAt(RADIUS_PATH)}
        onCommit={(value) =>
          value !== null && editJob((now) => withRidge(now, stepMm, value, sine), { at: RADIUS_PATH })
        }
      />
      <FigureField
        quantity="wood.stepMm"
        value={stepMm}
        range={{ min: 0.5, max: job.blade.widthMm }}
        onCommit={(value) => value !== null && setStepMm(value)}
      />
    </div>
  )
}

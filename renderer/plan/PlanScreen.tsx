import { NoJob } from '../app/NoJob.tsx'
import { ProblemNote } from '../app/ProblemNote.tsx'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { Angles } from './Angles.tsx'
import { Answer } from './Answer.tsx'
import { EdgeGlass } from './EdgeGlass.tsx'
import './drawings.css'
import './more.css'
import './plan.css'
import { SchedulePanel } from './SchedulePanel.tsx'
import { SeatDrawing } from './SeatDrawing.tsx'
import { ShavingDrawing } from './ShavingDrawing.tsx'
import { Sure } from './Sure.tsx'
import { TwoSeats } from './TwoSeats.tsx'
import { Wanted } from './Wanted.tsx'

/** Plan: from what the wood should see to the free play of the stops. */
export const PlanScreen = () => {
  const t = useTexts()
  const tool = useApp((app) => app.tool)
  const job = useApp((app) => app.job)
  const solved = useApp((app) => app.report)
  const answer = useApp((app) => app.answer)
  if (!tool || !job) return <NoJob />
  const report = solved && answer ? { ...solved, ...answer, job: job.document } : solved
  return (
    <div className="plan">
      <Wanted job={job.document} tool={tool} />
      <div className="plan-note">
        <ProblemNote />
      </div>
      {report ? (
        <>
          <div className="plan-drawings">
            <ShavingDrawing report={report} tool={tool} />
            <SeatDrawing report={report} />
            <EdgeGlass report={report} dot={tool.dotCorner} />
          </div>
          <Answer job={job.document} report={report} />
          <div className="plan-more">
            <Sure report={report} turns={report.freedom.turnsCalibrated ?? report.freedom.turnsForAim} />
            <SchedulePanel job={job.document} report={report} />
            <TwoSeats key={tool.id} tool={tool} report={report} />
            <Angles tool={tool} report={report} />
          </div>
        </>
      ) : (
        <p className="page-note">{t('plan:working')}</p>
      )}
    </div>
  )
}

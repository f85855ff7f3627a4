import type { Job } from '../../geometry/job.ts'
import type { BenchLog, Tool } from '../../main/contract/entities.ts'
import { hashFor } from '../app/route.ts'
import { useApp } from '../app/store.ts'
import { readOfLine } from '../measure/read.ts'
import { useReadings } from '../measure/useReadings.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { withCurve } from './aim.ts'

/** Points of the edge that a job starts from. */
const POINTS = 41

/** An edge line at equal steps across, for the job to start from. */
const sampled = (line: readonly (readonly [number, number])[], widthMm: number): number[] =>
  Array.from({ length: POINTS }, (_, k) => {
    const u = (k / (POINTS - 1) - 0.5) * widthMm
    const next = Math.max(
      1,
      line.findIndex(([at]) => at >= u),
    )
    const [a, b] = [line[next - 1], line[next]] as [readonly [number, number], readonly [number, number]]
    const share = (u - a[0]) / (b[0] - a[0])
    return a[1] + (b[1] - a[1]) * Math.min(1, Math.max(0, share))
  })

/** Relief is kept as finely as leaves are read (mm). */
const KEPT = 1000

/** Freshening keeps the curve that is there: the newest reading of it, and the key that has the stops follow it. */
export const Freshen = ({ job, tool }: { readonly job: Job; readonly tool: Tool }) => {
  const t = useTexts()
  const readings = useReadings(tool.id)
  if (readings === null) return null
  const line = readings.find((each) => readOfLine(each, tool)?.curve.line)
  if (!line) {
    return (
      <p>
        {t('plan:freshen.none')} <a href={hashFor('measure', tool.code)}>{t('plan:freshen.measure')}</a>
      </p>
    )
  }
  return <There job={job} tool={tool} line={line} />
}

const There = ({ job, tool, line }: { readonly job: Job; readonly tool: Tool; readonly line: BenchLog }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const editJob = useApp((app) => app.editJob)
  const read = readOfLine(line, tool)
  if (!read?.curve.line) return null
  const reliefMm = Math.round(read.edge.reliefMm * KEPT) / KEPT
  const startEdge = sampled(read.curve.line, tool.widthMm)
  const follow = (now: Job): Job => {
    const aimed = withCurve(now, 'reliefMm', reliefMm)
    return { ...aimed, blade: { ...aimed.blade, startEdge } }
  }
  const words = { relief: inWords(reliefMm, 'mm', 2), date: shortDate(line.at), stage: t(`common:stage.${line.stage}`) }
  const followed = JSON.stringify(job.blade.startEdge) === JSON.stringify(startEdge) && job.aim.reliefMm === reliefMm
  return (
    <>
      <p>{t('plan:freshen.there', words)}</p>
      {followed ? (
        <p className="muted">{t('plan:freshen.follows')}</p>
      ) : (
        <button type="button" className="key" onClick={() => void editJob(follow)}>
          {t('plan:freshen.follow')}
        </button>
      )}
    </>
  )
}

import type { Tool } from '../../main/contract/entities.ts'
import { NoJob } from '../app/NoJob.tsx'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { takenOf, useBench, useSheet } from './bench.ts'
import { Entries } from './Entries.tsx'
import { lastTimeOf } from './lastTime.ts'
import { MeasuredGlass } from './MeasuredGlass.tsx'
import './measure.css'
import { Readings } from './Readings.tsx'
import { nextStage } from './reading.ts'
import { ShownEdge } from './ShownEdge.tsx'
import { Straightedge } from './Straightedge.tsx'
import { Strips } from './Strips.tsx'
import { showing } from './shown.ts'
import { useReadings } from './useReadings.ts'

/** Measure: from the leaves that pass to the edge that is there, over the one wanted and predicted, into the bench log. */
export const MeasureScreen = () => {
  const tool = useApp((app) => app.tool)
  return tool ? <Measuring tool={tool} /> : <NoJob />
}

/** An iron can be measured before there is a job that can be worked out; then only what is wanted is shown beside it. */
const Measuring = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const report = useApp((app) => app.report)
  const readings = useReadings(tool.id)
  const sheet = useSheet(tool.id)
  const stepsMm = useBench((bench) => bench.stepsMm)
  const stage = sheet.stage ?? nextStage(readings?.[0], new Date())
  const now = showing(takenOf(sheet, stepsMm, tool), readings ?? [], tool)
  return (
    <div className="measure">
      <Entries
        key={tool.id}
        tool={tool}
        sheet={sheet}
        stage={stage}
        newest={lastTimeOf(readings ?? [], sheet.method)}
        problems={now.shown ? [] : now.problems}
        edge={now.shown?.line === null ? now.shown.edge : null}
      />
      <ShownEdge tool={tool} report={report} method={sheet.method} stage={stage} showing={now} />
      <div className="measure-drawings">
        {sheet.method === 'shavings' ? <Strips tool={tool} /> : <Straightedge shown={now.shown} dot={tool.dotCorner} />}
        <MeasuredGlass tool={tool} report={report} shown={now.shown} />
      </div>
      <section className="measure-log" aria-label={t('measure:log.heading')}>
        <h2>{t('measure:log.heading')}</h2>
        <Readings tool={tool} readings={readings} editable />
      </section>
    </div>
  )
}

import './faultsTexts.ts'
import { useEffect, useState } from 'react'
import { type Signature, suspectsOf } from '../../geometry/diagnose.ts'
import type { Job } from '../../geometry/job.ts'
import type { Report } from '../../geometry/report.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { NoJob } from '../app/NoJob.tsx'
import { useApp } from '../app/store.ts'
import { useReadings } from '../measure/useReadings.ts'
import { useTexts } from '../ui/texts.tsx'
import { doAside } from '../worker/aside.ts'
import './faults.css'
import { symptomOfReading } from './fromReading.ts'
import { Suspects } from './Suspects.tsx'
import { Symptoms } from './Symptoms.tsx'
import { setSeen, useSeen } from './setting.ts'

/** What went wrong: from what is seen to what may have made it so. */
export const FaultsPart = () => {
  const t = useTexts()
  const tool = useApp((app) => app.tool)
  const job = useApp((app) => app.job?.document ?? null)
  const report = useApp((app) => app.report)
  if (!tool || !job) return <NoJob />
  if (!report) return <p className="page-note">{t('plan:working')}</p>
  return <Faults tool={tool} job={job} report={report} />
}

interface FaultsProps {
  readonly tool: Tool
  readonly job: Job
  readonly report: Report
}

const Faults = ({ tool, job, report }: FaultsProps) => {
  const t = useTexts()
  const seen = useSeen(tool.id)
  const signatures = useSignatures(job)
  const readings = useReadings(tool.id)
  const told = symptomOfReading(readings ?? [], tool, report)
  return (
    <div className="faults">
      <section aria-label={t('faults:seen.heading')}>
        <h2>{t('faults:seen.heading')}</h2>
        {told !== null && !seen.includes(told) && (
          <p>
            {t('faults:seen.byReading', { symptom: t(`faults:symptom.${told}`) })}{' '}
            <button type="button" className="word" onClick={() => setSeen(tool.id, told, true)}>
              {t('faults:seen.takeReading')}
            </button>
          </p>
        )}
        <Symptoms toolId={tool.id} seen={seen} />
      </section>
      <section aria-label={t('faults:suspects.heading')}>
        <h2>{t('faults:suspects.heading')}</h2>
        {seen.length === 0 ? (
          <p className="muted">{t('faults:suspects.nothing')}</p>
        ) : signatures === null ? (
          <p className="muted" role="status">
            {t('faults:suspects.working')}
          </p>
        ) : (
          <Suspects job={job} suspects={suspectsOf(signatures, seen)} />
        )}
      </section>
    </div>
  )
}

/** Every fault ground by the engine on this job, aside; null while it is at work. */
const useSignatures = (job: Job): readonly Signature[] | null => {
  const [found, setFound] = useState<{ readonly job: Job; readonly signatures: readonly Signature[] } | null>(null)
  useEffect(() => {
    const work = doAside({ type: 'diagnose', job }, (said) => (said.type === 'diagnosed' ? said.signatures : undefined))
    void work.result.then((signatures) => signatures && setFound({ job, signatures }))
    return work.giveUp
  }, [job])
  return found?.job === job ? found.signatures : null
}

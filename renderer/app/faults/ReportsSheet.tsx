import { useCallback, useEffect, useState } from 'react'
import type { FaultReport } from '../../../main/contract/reports.ts'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { handOverBytes } from '../handOver.ts'
import { call } from '../transport.ts'

/** Reports of faults, each in full before it is taken anywhere: what is shown is all there is. */
const ReportsSheet = ({ onClose }: { readonly onClose: () => void }) => {
  const t = useTexts()
  const [reports, setReports] = useState<readonly FaultReport[] | null>(null)
  const read = useCallback(async () => {
    const listed = await call('report.list', {})
    setReports(listed.ok ? listed.value : [])
  }, [])
  useEffect(() => void read(), [read])
  const remove = async (name: string): Promise<void> => {
    await call('report.remove', { name })
    await read()
  }
  return (
    <Sheet title={t('reports:title')} onClose={onClose}>
      <p className="fault-text">{t('reports:how')}</p>
      {reports?.length === 0 && <p className="muted">{t('reports:none')}</p>}
      {reports?.map((report) => (
        <section key={report.name} className="fault-report" aria-label={report.text.split('\n')[0]}>
          <pre>{report.text}</pre>
          <div className="fault-report-keys">
            <button
              type="button"
              className="key"
              onClick={() => handOverBytes(report.text, 'text/plain', `camberwright-${report.name}`, 'out:handedOver')}
            >
              {t('reports:save')}
            </button>
            <button type="button" className="word" onClick={() => void remove(report.name)}>
              {t('reports:remove')}
            </button>
          </div>
        </section>
      ))}
    </Sheet>
  )
}

export default ReportsSheet

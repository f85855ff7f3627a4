import { lazy, Suspense, useState } from 'react'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useActions } from '../actions.ts'
import './reports.css'

const ReportsSheet = lazy(() => import('./ReportsSheet.tsx'))

/** The host opens the page with this after it had to be started again. */
const AFTER_FAULT = new URLSearchParams(location.search).get('after') === 'fault'

/** Over whatever screen there is: that the window was started again, and the reports of faults when they are asked for. */
export const FaultSheets = () => {
  const [after, setAfter] = useState(AFTER_FAULT)
  const [reports, setReports] = useState(false)
  useActions({ reports: () => setReports(true) })
  const leave = (): void => {
    history.replaceState(null, '', `${location.pathname}${location.hash}`)
    setAfter(false)
  }
  return (
    <>
      {after && !reports && <StartedAgain onReports={() => setReports(true)} onClose={leave} />}
      {reports && (
        <Suspense fallback={null}>
          <ReportsSheet
            onClose={() => {
              setReports(false)
              leave()
            }}
          />
        </Suspense>
      )}
    </>
  )
}

interface StartedAgainProps {
  readonly onReports: () => void
  readonly onClose: () => void
}

const StartedAgain = ({ onReports, onClose }: StartedAgainProps) => {
  const t = useTexts()
  return (
    <Sheet title={t('reports:again.title')} onClose={onClose}>
      <p className="fault-text">{t('reports:again.how')}</p>
      <button type="button" className="key" onClick={onReports}>
        {t('reports:open')}
      </button>
    </Sheet>
  )
}

import { ProblemHelp } from '../help/ProblemHelp.tsx'
import { useTexts } from '../ui/texts.tsx'
import { MadeFileLink } from './MadeFileLink.tsx'
import { recordName } from './recordName.ts'
import { useApp } from './store.ts'
import { undo } from './storeRack.ts'
import './status.css'

/** What keys of problems' sentences begin with. */
const OF_PROBLEMS = 'problems:'

/** One line at the foot: what was just done, with its undo, or that something is being worked out. */
export const StatusLine = () => {
  const t = useTexts()
  const message = useApp((app) => app.message)
  const solving = useApp((app) => app.solving)
  return (
    <footer className="status-line" data-empty={message === null}>
      <p role="status" data-testid="status">
        {message ? t(message.key, { ...message.params, record: message.record && recordName(t, message.record) }) : ''}
      </p>
      {message?.key.startsWith(OF_PROBLEMS) && <ProblemHelp code={message.key.slice(OF_PROBLEMS.length)} />}
      {message?.file && <MadeFileLink file={message.file} />}
      {message?.changeId != null && (
        <button type="button" className="word" onClick={() => void undo(message.changeId as number)}>
          {t('common:undoThis')}
        </button>
      )}
      <p className="muted solving" aria-hidden={!solving} data-on={solving}>
        {t('common:solving')}
      </p>
    </footer>
  )
}

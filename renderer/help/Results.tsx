import { useTexts } from '../ui/texts.tsx'
import type { Entry } from './entry.ts'

/** More than are looked through; another word narrows them down. */
const MOST_SHOWN = 60

interface ResultsProps {
  readonly found: readonly Entry[]
  readonly onOpen: (entry: Entry) => void
}

/** What was found, a line each with the page it stands on; choosing one goes there. */
export const Results = ({ found, onOpen }: ResultsProps) => {
  const t = useTexts()
  return (
    <>
      <p role="status" className="muted">
        {found.length === 0
          ? t('help:none')
          : found.length > MOST_SHOWN
            ? t('help:foundMore', { count: found.length, shown: MOST_SHOWN })
            : t('help:found', { count: found.length })}
      </p>
      <ul className="help-found">
        {found.slice(0, MOST_SHOWN).map((entry) => (
          <li key={entry.id}>
            <button type="button" onClick={() => onOpen(entry)}>
              <strong>{entry.title}</strong>
              <span className="muted">
                {t(`help:page.${entry.page}`)}
                {entry.group ? `, ${entry.group}` : ''}
              </span>
              <span className="help-line">{entry.lines[0] ?? ''}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  )
}

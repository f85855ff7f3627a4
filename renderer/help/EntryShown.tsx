import { act } from '../app/actions.ts'
import { go } from '../app/route.ts'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import type { Entry } from './entry.ts'
import { closeHelp } from './useHelp.ts'

interface EntryProps {
  readonly entry: Entry
  readonly heading: 'h3' | 'h4'
}

/** One entry, whole: what it means, what to do, where it is. */
export const EntryShown = ({ entry, heading: Heading }: EntryProps) => {
  const { id, title, lines, steps, facts, act: action, place } = entry
  return (
    <div className="help-entry">
      <Heading data-help={id} tabIndex={-1}>
        {title}
      </Heading>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {steps && (
        <ol>
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      )}
      {facts && <p className="muted">{facts.join('; ')}</p>}
      {action && <ToSheet action={action} />}
      {place && <WayThere title={title} place={place} />}
    </div>
  )
}

const ToSheet = ({ action }: { readonly action: NonNullable<Entry['act']> }) => {
  const t = useTexts()
  const follow = () => {
    closeHelp()
    act(action)
  }
  return (
    <button type="button" className="word" onClick={follow}>
      {t(`${action}:open`)}
    </button>
  )
}

const WayThere = ({ title, place }: Required<Pick<Entry, 'title' | 'place'>>) => {
  const t = useTexts()
  const code = useApp((app) => app.tool?.code ?? null)
  const follow = () => {
    closeHelp()
    go(place.screen, code, place.part)
  }
  return (
    <button type="button" className="word" aria-label={t('help:goThereTo', { title })} onClick={follow}>
      {t('help:goThere')}
    </button>
  )
}

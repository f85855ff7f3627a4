import { useState } from 'react'
import { TextEntry } from '../../ui/Entry.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { findLines, type LabelLine } from './lines.ts'

interface ForWhatProps {
  readonly lines: readonly LabelLine[]
  readonly ticked: ReadonlySet<string>
  readonly onTick: (ids: ReadonlySet<string>) => void
}

/** Lines shown at once; a longer list is narrowed by typing. */
const MOST_SHOWN = 200

/** Everything that can have a label, each with a box to tick. */
export const ForWhat = ({ lines, ticked, onTick }: ForWhatProps) => {
  const t = useTexts()
  const [typed, setTyped] = useState('')
  const found = findLines(lines, typed)
  const shown = found.slice(0, MOST_SHOWN)
  const tick = (id: string, on: boolean) => {
    const next = new Set(ticked)
    if (on) next.add(id)
    else next.delete(id)
    onTick(next)
  }
  return (
    <fieldset className="labels-for">
      <legend className="options-legend">{t('labels:for.legend')}</legend>
      <TextEntry name={t('labels:for.find')} value={typed} onChange={setTyped} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls must be reached by keys */}
      <ul tabIndex={0} aria-label={t('labels:for.list')}>
        {shown.map(({ id, code, name }) => (
          <li key={id}>
            <label className="labels-line">
              <input
                className="labels-box"
                type="checkbox"
                checked={ticked.has(id)}
                onChange={(event) => tick(id, event.target.checked)}
              />
              <span className="labels-code">{code}</span> {name}
            </label>
          </li>
        ))}
        {shown.length === 0 && <li className="muted">{t('labels:for.none')}</li>}
      </ul>
      {found.length > shown.length && <p className="muted">{t('labels:for.more', { count: MOST_SHOWN })}</p>}
      <p className="labels-tick">
        <button
          type="button"
          className="word"
          disabled={found.length === 0}
          onClick={() => onTick(new Set([...ticked, ...found.map(({ id }) => id)]))}
        >
          {t('labels:for.tickShown', { count: found.length })}
        </button>
        <button type="button" className="word" onClick={() => onTick(new Set())}>
          {t('labels:for.untick')}
        </button>
        <span className="muted" role="status">
          {t('labels:for.chosen', { count: ticked.size })}
        </span>
      </p>
    </fieldset>
  )
}

import { useEffect, useMemo, useRef, useState } from 'react'
import help from '../../assets/texts/en/help.json' with { type: 'json' }
import { partOf, parts } from '../app/parts.ts'
import { type Screen, useRoute } from '../app/route.ts'
import { useApp } from '../app/store.ts'
import { modelPage } from '../grind/model/modelPage.ts'
import { Sheet } from '../ui/Sheet.tsx'
import { addTexts, useTexts } from '../ui/texts.tsx'
import { allEntries } from './allEntries.ts'
import { type Entry, type Page, pageOf } from './entry.ts'
import { findEntries, indexed } from './find.ts'
import './help.css'
import { PageNav, PageShown } from './PageShown.tsx'
import { Results } from './Results.tsx'
import { useAbout } from './useAbout.ts'
import { closeHelp } from './useHelp.ts'

addTexts('help', help)

const isPart = (screen: Screen, name: string): boolean => name in parts[screen]

const useEntries = (): readonly Entry[] => {
  const t = useTexts()
  const lengthUnit = useApp((app) => app.settings.lengthUnit)
  const about = useAbout()
  return useMemo(() => allEntries(t, { lengthUnit, about, modelPage: modelPage(), isPart }), [t, lengthUnit, about])
}

/** Help: its pages, and a search over all of them. @param at the entry to begin with; empty for the part that is shown */
export const HelpSheet = ({ at }: { readonly at: string }) => {
  const t = useTexts()
  const entries = useEntries()
  const { screen, part } = useRoute()
  const [typed, setTyped] = useState('')
  const [shown, setShown] = useState<{ readonly page: Page; readonly entry: string }>({ page: pageOf(at), entry: at })
  const index = useMemo(() => indexed(entries), [entries])
  const body = useRef<HTMLDivElement>(null)
  const field = useRef<HTMLInputElement>(null)
  // The sheet itself has put the focus on its first key.
  useEffect(() => field.current?.focus(), [])
  useEffect(() => show(body.current, shown.entry), [shown])
  const open = ({ page, id }: Entry): void => {
    setTyped('')
    setShown({ page, entry: id })
  }
  return (
    <Sheet title={t('help:title')} onClose={closeHelp}>
      <div className="help" ref={body}>
        <label className="unseen" htmlFor="help-find">
          {t('help:find')}
        </label>
        <input
          id="help-find"
          ref={field}
          type="search"
          placeholder={t('help:findHint')}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
        {typed.trim() === '' ? (
          <>
            <PageNav page={shown.page} onChoose={(page) => setShown({ page, entry: '' })} />
            <PageShown page={shown.page} entries={entries} here={`parts.${screen}.${partOf(screen, part)}`} />
          </>
        ) : (
          <Results found={findEntries(index, typed)} onOpen={open} />
        )}
      </div>
    </Sheet>
  )
}

/** Brings an entry into sight and gives it the focus, so that it is read next. */
const show = (body: HTMLElement | null, entry: string): void => {
  if (entry === '') return
  const place = body?.querySelector<HTMLElement>(`[data-help="${CSS.escape(entry)}"]`)
  place?.scrollIntoView({ block: 'start' })
  place?.focus({ preventScroll: true })
}

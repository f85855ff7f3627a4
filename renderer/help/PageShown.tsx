import { lazy, Suspense } from 'react'
import { openTour } from '../tour/useTour.ts'
import { useTexts } from '../ui/texts.tsx'
import { EntryShown } from './EntryShown.tsx'
import { type Entry, type Page, pages } from './entry.ts'
import { closeHelp } from './useHelp.ts'

const ModelPage = lazy(() => import('../grind/model/ModelPanel.tsx'))
const Licences = lazy(() => import('./Licences.tsx'))

interface PageNavProps {
  readonly page: Page
  readonly onChoose: (page: Page) => void
}

export const PageNav = ({ page, onChoose }: PageNavProps) => {
  const t = useTexts()
  return (
    <nav className="help-pages" aria-label={t('help:pages')}>
      {pages.map((each) => (
        <button
          key={each}
          type="button"
          className="word"
          aria-current={each === page ? 'page' : undefined}
          onClick={() => onChoose(each)}
        >
          {t(`help:page.${each}`)}
        </button>
      ))}
    </nav>
  )
}

/** A page of help. @param here the entry of the part that is shown, which comes first */
export const PageShown = ({
  page,
  entries,
  here,
}: {
  readonly page: Page
  readonly entries: readonly Entry[]
  readonly here: string
}) => {
  const t = useTexts()
  const ofPage = entries.filter((entry) => entry.page === page)
  const first = ofPage.filter(({ id }) => id === here)
  return (
    <div className="help-page">
      {page !== 'about' && <p>{t(`help:intro.${page}`)}</p>}
      {page === 'parts' && <TourKey />}
      {page === 'model' ? (
        <Suspense fallback={<p>{t('common:opening')}</p>}>
          <ModelPage />
        </Suspense>
      ) : (
        Array.from(
          Map.groupBy([...first, ...ofPage.filter(({ id }) => id !== here)], ({ group }) => group ?? ''),
          ([group, of]) => <Group key={group} name={group} entries={of} />,
        )
      )}
      {page === 'about' && (
        <Suspense fallback={null}>
          <Licences />
        </Suspense>
      )}
    </div>
  )
}

const Group = ({ name, entries }: { readonly name: string; readonly entries: readonly Entry[] }) => (
  <>
    {name !== '' && <h3 className="help-group">{name}</h3>}
    {entries.map((entry) => (
      <EntryShown key={entry.id} entry={entry} heading={name === '' ? 'h3' : 'h4'} />
    ))}
  </>
)

const TourKey = () => {
  const t = useTexts()
  const begin = () => {
    closeHelp()
    openTour()
  }
  return (
    <button type="button" className="key" onClick={begin}>
      {t('help:tourOpen')}
    </button>
  )
}

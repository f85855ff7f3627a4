import type { Filter } from '../../main/contract/finding.ts'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { ColumnChoice } from './ColumnChoice.tsx'
import { narrow, useFinding } from './finding.ts'
import { MoreFilters } from './MoreFilters.tsx'
import './narrowing.css'

/** The questions asked every day, with how many tools each finds; each sets these two conditions and no other. */
const quick = {
  all: { due: undefined, lent: undefined },
  due: { due: 'any', lent: undefined },
  lent: { due: undefined, lent: 'lent' },
  overdue: { due: undefined, lent: 'overdue' },
} as const satisfies Record<string, Partial<Filter>>
type Quick = keyof typeof quick

const chosenIn = ({ due, lent }: Filter): Quick | null =>
  (Object.keys(quick) as Quick[]).find((key) => quick[key].due === due && quick[key].lent === lent) ?? null

/** Narrows the list: all, due, lent, overdue, and whatever else is asked. */
export const Narrowing = () => {
  const t = useTexts()
  const standing = useApp((app) => app.standing)
  const filter = useFinding((finding) => finding.filter)
  const chosen = chosenIn(filter)
  const counts: Record<Quick, number> = {
    all: standing.tools,
    due: standing.due,
    lent: standing.lent,
    overdue: standing.overdue,
  }
  return (
    <div className="narrowing">
      <fieldset>
        <legend className="unseen">{t('rack:narrow.legend')}</legend>
        {(Object.keys(quick) as Quick[]).map((key) => (
          <button
            key={key}
            type="button"
            className="word"
            aria-pressed={chosen === key}
            onClick={() => narrow(quick[key])}
          >
            {t(`rack:narrow.${key}`)} <span className="count">{t('rack:narrow.count', { count: counts[key] })}</span>
          </button>
        ))}
      </fieldset>
      <MoreFilters />
      <ColumnChoice />
    </div>
  )
}

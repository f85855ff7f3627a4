import type { TFunction } from 'i18next'
import type { ToolLine } from '../../main/contract/entities.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { ToolLines } from './ToolLines.tsx'
import { useTools } from './useTools.ts'

/** Tools shown; the rack itself shows all. */
const MOST_SHOWN = 200

const sinceWhen = (t: TFunction, { lastGroundAt, honings }: ToolLine): string =>
  [
    lastGroundAt !== null && t('due:ground', { day: shortDate(lastGroundAt) }),
    honings > 0 && t('due:honed', { count: honings }),
  ]
    .filter(Boolean)
    .join(' ')

/** What the log says is sharp and at home: ground or honed, not hurt since, not due. */
export const SharpNow = () => {
  const t = useTexts()
  const found = useTools({ filter: { sharp: 'yes' }, sort: 'lastGroundAt', descending: true, limit: MOST_SHOWN })
  if (found === null) return null
  return (
    <section aria-label={t('due:view.sharp')}>
      <p className="sentence">{found.total === 0 ? t('due:noneSharp') : t('due:sharp', { count: found.total })}</p>
      <p className="muted">{t('due:byTheLog')}</p>
      <ToolLines found={found} words={(tool) => sinceWhen(t, tool)} />
    </section>
  )
}

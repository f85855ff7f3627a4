import type { TFunction } from 'i18next'
import type { CallInput } from '../../main/contract/calls.ts'
import type { dueReasons, ToolLine } from '../../main/contract/entities.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { ToolLines } from './ToolLines.tsx'
import { useTools } from './useTools.ts'

type Reason = (typeof dueReasons)[number]

/** Tools shown of each reason; the rack itself shows all. */
const MOST_SHOWN = 100

/** What presses most stands first. */
const asked: Readonly<Record<Reason, CallInput<'tool.find'>>> = {
  state: { filter: { due: 'state' } },
  use: { filter: { due: 'use' }, sort: 'honings', descending: true },
  time: { filter: { due: 'time' }, sort: 'lastGroundAt' },
}

const DAY_MS = 24 * 60 * 60 * 1000

const daysSince = (utc: string): number => Math.floor((Date.now() - Date.parse(utc)) / DAY_MS)

/** Why one iron is due, with its own figures. */
const whyDue = (t: TFunction, reason: Reason, tool: ToolLine): string => {
  const { harmed, honings, dueHonings, lastGroundAt, dueDays } = tool
  if (reason === 'state') return t(harmed === 'yes' ? 'due:why.harmed' : 'due:why.damaged')
  if (reason === 'use') return t('due:why.use', { count: honings, most: dueHonings ?? 0 })
  if (lastGroundAt === null) return ''
  return t('due:why.time', { day: shortDate(lastGroundAt), count: daysSince(lastGroundAt), most: dueDays ?? 0 })
}

/** The irons that are due for one reason. */
export const DueGroup = ({ reason }: { readonly reason: Reason }) => {
  const t = useTexts()
  const found = useTools({ ...asked[reason], limit: MOST_SHOWN })
  if (found === null || found.total === 0) return null
  return (
    <section aria-label={t(`due:reason.${reason}`)}>
      <h2>
        {t(`due:reason.${reason}`)} <span className="muted">{found.total}</span>
      </h2>
      <ToolLines found={found} words={(tool) => whyDue(t, reason, tool)} />
    </section>
  )
}

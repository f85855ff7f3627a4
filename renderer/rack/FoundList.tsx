import type { Tool } from '../../main/contract/entities.ts'
import { go, settle } from '../app/route.ts'
import { useApp } from '../app/store.ts'
import { takeTool } from '../app/storeJob.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFinding } from './finding.ts'
import { ToolTable } from './ToolTable.tsx'
import { useFound } from './useFound.ts'

/** Takes a tool in hand and says so in the address. */
export const choose = (tool: Tool): void => {
  takeTool(tool)
  settle('rack', tool.code)
}

const plan = (tool: Tool): void => go('plan', tool.code)

/** What is found; of the whole screen this alone is drawn again at each letter, and its table only once there is an answer. */
export const FoundList = () => {
  const t = useTexts()
  const { typed, ...asked } = useFinding()
  const { rows, see } = useFound({ search: typed, ...asked })
  const held = useApp((app) => app.tool)
  if (!rows) return null
  return (
    <>
      <ToolTable rows={rows} see={see} held={held} onChoose={choose} onPlan={plan} />
      {rows.more && <p className="muted">{t('rack:moreFound', { count: rows.total })}</p>}
    </>
  )
}

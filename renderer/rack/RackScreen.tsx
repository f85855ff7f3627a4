import { useState } from 'react'
import type { Tool } from '../../main/contract/entities.ts'
import { go, settle } from '../app/route.ts'
import { useApp } from '../app/store.ts'
import { takeTool } from '../app/storeJob.ts'
import { useTexts } from '../ui/texts.tsx'
import { EmptyRack } from './EmptyRack.tsx'
import { findTools } from './find.ts'
import { findTyped, useFinding } from './finding.ts'
import { LabelsWhenOpen } from './labels/LabelsSheet.tsx'
import { Places } from './Places.tsx'
import './rack.css'
import { RackHead } from './RackHead.tsx'
import { ToolDetail } from './ToolDetail.tsx'
import { ToolSheet } from './ToolSheet.tsx'
import { ToolTable } from './ToolTable.tsx'

/** Takes a tool in hand and says so in the address. */
const choose = (tool: Tool): void => {
  takeTool(tool)
  settle('rack', tool.code)
}

/** Rack: every edge tool, the one in hand beside the list, and the stations and fixtures that serve them. */
export const RackScreen = () => {
  const t = useTexts()
  const tools = useApp((app) => app.tools)
  const held = useApp((app) => app.tool)
  const typed = useFinding((finding) => finding.typed)
  const [sheet, setSheet] = useState<'add' | 'edit' | null>(null)
  const found = findTools(tools, typed, (kind) => t(`common:toolKind.${kind}`))
  return (
    <div className="rack">
      <section className="rack-list" aria-label={t('rack:list')}>
        <RackHead typed={typed} onType={findTyped} onAdd={() => setSheet('add')} />
        {tools.length === 0 ? (
          <EmptyRack onAdd={() => setSheet('add')} />
        ) : (
          <ToolTable tools={found} held={held} onChoose={choose} onPlan={(tool) => go('plan', tool.code)} />
        )}
        <Places />
      </section>
      <aside className="rack-detail" aria-label={t('rack:detail')}>
        {held ? (
          <ToolDetail key={held.id} tool={held} onEdit={() => setSheet('edit')} />
        ) : (
          <p className="muted">{t('rack:chooseOne')}</p>
        )}
      </aside>
      <LabelsWhenOpen />
      {sheet && <ToolSheet tool={sheet === 'edit' ? held : null} onChoose={choose} onClose={() => setSheet(null)} />}
    </div>
  )
}

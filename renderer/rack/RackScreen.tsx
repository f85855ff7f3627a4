import { useState } from 'react'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { Belonging } from './belonging/Belonging.tsx'
import { ChosenBar } from './choosing/ChosenBar.tsx'
import { toolDraftOf } from './drafts.ts'
import { EmptyRack } from './EmptyRack.tsx'
import { choose, FoundList } from './FoundList.tsx'
import { LabelsWhenOpen } from './labels/LabelsWhenOpen.tsx'
import { Narrowing } from './Narrowing.tsx'
import { Serving } from './serving/Serving.tsx'
import './rack.css'
import { RackHead } from './RackHead.tsx'
import { ToolSheet } from './sheets.tsx'
import { ToolDetail } from './ToolDetail.tsx'

/** Rack: every edge tool, the one in hand beside the list, and the stations and fixtures that serve them. */
export const RackScreen = () => {
  const t = useTexts()
  const none = useApp((app) => app.ready && app.standing.tools === 0)
  const held = useApp((app) => app.tool)
  const [sheet, setSheet] = useState<'add' | 'edit' | 'duplicate' | null>(null)
  return (
    <div className="rack">
      <section className="rack-list" aria-label={t('rack:list')}>
        <RackHead onAdd={() => setSheet('add')} />
        {none && <EmptyRack onAdd={() => setSheet('add')} />}
        {!none && <Narrowing />}
        {!none && <ChosenBar />}
        {!none && <FoundList />}
        <Serving />
        <Belonging />
      </section>
      <aside className="rack-detail" aria-label={t('rack:detail')}>
        {held ? (
          <ToolDetail
            key={held.id}
            tool={held}
            onEdit={() => setSheet('edit')}
            onDuplicate={() => setSheet('duplicate')}
          />
        ) : (
          <p className="muted">{t('rack:chooseOne')}</p>
        )}
      </aside>
      <LabelsWhenOpen />
      {sheet === 'duplicate' && held && (
        <ToolSheet
          tool={null}
          begin={{ ...toolDraftOf(held), name: t('rack:duplicateName', { name: held.name }) }}
          onChoose={choose}
          onClose={() => setSheet(null)}
        />
      )}
      {(sheet === 'add' || sheet === 'edit') && (
        <ToolSheet tool={sheet === 'edit' ? held : null} onChoose={choose} onClose={() => setSheet(null)} />
      )}
    </div>
  )
}

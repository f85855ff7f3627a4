import { useState } from 'react'
import type { Tool, ToolDraft } from '../../../main/contract/entities.ts'
import { useApp } from '../../app/store.ts'
import type { FieldSpec } from '../../ui/fieldSpec.ts'
import { RecordForm } from '../../ui/RecordForm.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { newTool, toolDraftOf, toolFields } from '../drafts.ts'
import { saveTool } from '../edits.ts'
import { CurvesField } from './CurvesField.tsx'
import { KeepPattern } from './KeepPattern.tsx'
import { OwnFields } from './OwnFields.tsx'
import { PatternChoice } from './PatternChoice.tsx'

interface ToolSheetProps {
  /** Null: a new one. */
  readonly tool: Tool | null
  /** What a new one begins with; left out: common practice. */
  readonly begin?: Partial<ToolDraft>
  readonly onChoose: (tool: Tool) => void
  readonly onClose: () => void
}

/** Fields that are lists of their own. */
const madeFields: readonly FieldSpec<ToolDraft>[] = [
  { kind: 'made', key: 'curves', section: 'rack:section.edge', Field: CurvesField },
  { kind: 'made', key: 'own', section: 'rack:section.notes', Field: OwnFields },
]

/** Everything about one tool, to fill in or to mend. */
export const ToolSheet = ({ tool, begin = newTool, onChoose, onClose }: ToolSheetProps) => {
  const t = useTexts()
  const places = useApp((app) => app.places)
  const [pattern, setPattern] = useState({ id: '', begin })
  const save = async (draft: ToolDraft) => {
    const saved = await saveTool(tool, draft)
    if (saved.ok) onChoose(saved.value.value)
    return saved
  }
  return (
    <Sheet title={tool ? t('rack:sheet.edit', { name: tool.name }) : t('rack:sheet.add')} onClose={onClose}>
      {!tool && begin === newTool && (
        <PatternChoice chosen={pattern.id} onChoose={(id, start) => setPattern({ id, begin: start })} />
      )}
      <RecordForm<ToolDraft>
        key={pattern.id}
        texts="rack:field"
        fields={[...toolFields(places), ...madeFields]}
        start={tool ? toolDraftOf(tool) : pattern.begin}
        saveLabel={t(tool ? 'rack:sheet.save' : 'rack:sheet.saveNew')}
        onSave={save}
        onDone={onClose}
      />
      {tool && <KeepPattern tool={tool} />}
    </Sheet>
  )
}

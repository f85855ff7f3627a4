import { useState } from 'react'
import { type LabelNoun, labelNouns } from '../../main/contract/codes.ts'
import { sayProblem } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { type Removable, removeRecord } from './edits.ts'
import { openLabels } from './labels/useLabels.ts'
import { HistorySheet } from './sheets.tsx'

interface RecordKeysProps {
  readonly noun: Removable
  readonly record: { readonly id: string; readonly code: string; readonly version: number; readonly name: string }
  readonly onClose: () => void
}

/** What can be done with a record beside changing it: put it in the scrap box, and make its label. */
export const RecordKeys = ({ noun, record, onClose }: RecordKeysProps) => {
  const t = useTexts()
  const [history, setHistory] = useState(false)
  const remove = async () => {
    const removed = await removeRecord(noun, record)
    if (removed.ok) onClose()
    else if (removed.problems[0]) sayProblem(removed.problems[0])
  }
  const labelled = labelNouns.find((each) => each === noun)
  const label = (labelNoun: LabelNoun) => {
    onClose()
    openLabels([{ noun: labelNoun, id: record.id }])
  }
  return (
    <div>
      <button type="button" className="word" onClick={() => void remove()}>
        {t('rack:remove')}
      </button>
      <button type="button" className="word" onClick={() => setHistory(true)}>
        {t('history:open')}
      </button>
      {labelled && (
        <button type="button" className="word" onClick={() => label(labelled)}>
          {t('labels:openOne')}
        </button>
      )}
      {history && <HistorySheet of={record} onClose={() => setHistory(false)} />}
    </div>
  )
}

import { useState } from 'react'
import type { CallInput } from '../../../main/contract/calls.ts'
import type { Person } from '../../../main/contract/people.ts'
import { RecordForm } from '../../ui/RecordForm.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { saveRecord } from '../edits.ts'
import { personFields } from './fields.ts'
import { PurgeSheet } from './PurgeSheet.tsx'

type PersonDraft = CallInput<'person.add'>

interface PersonSheetProps {
  /** Null: a new one. */
  readonly person: Person | null
  readonly onClose: () => void
}

/** Somebody of the workshop: a name, and whether he or she is an apprentice. Nothing more is kept. */
export const PersonSheet = ({ person, onClose }: PersonSheetProps) => {
  const t = useTexts()
  const [purging, setPurging] = useState(false)
  if (person && purging) return <PurgeSheet person={person} onClose={onClose} />
  return (
    <Sheet title={person ? t('rack:sheet.edit', { name: person.name }) : t('rack:person.add')} onClose={onClose}>
      <RecordForm<PersonDraft>
        texts="rack:field"
        fields={personFields}
        start={{ name: person?.name, apprentice: person?.apprentice ?? 'no' }}
        saveLabel={t('rack:sheet.save')}
        onSave={(draft) => saveRecord('person', person, draft)}
        onDone={onClose}
      />
      {person && (
        <button type="button" className="word" onClick={() => setPurging(true)}>
          {t('people:open')}
        </button>
      )}
    </Sheet>
  )
}

import type { CallInput } from '../../../main/contract/calls.ts'
import type { OwnField } from '../../../main/contract/extras.ts'
import { NoteEntry } from '../../ui/Entry.tsx'
import type { FieldSpec, MadeFieldProps } from '../../ui/fieldSpec.ts'
import { RecordForm } from '../../ui/RecordForm.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { saveRecord } from '../edits.ts'
import { RecordKeys } from '../RecordKeys.tsx'
import { ownFieldFields } from './fields.ts'

type OwnFieldDraft = CallInput<'ownField.add'>

/** What may be chosen, a line each. */
const ChoicesField = ({ name, value, problem, onChange }: MadeFieldProps) => (
  <NoteEntry
    name={name}
    value={((value as readonly string[] | undefined) ?? []).join('\n')}
    problem={problem}
    onChange={(lines) => onChange(lines.split('\n'))}
  />
)

const fields: readonly FieldSpec<OwnFieldDraft>[] = [
  ...ownFieldFields,
  { kind: 'made', key: 'choices', Field: ChoicesField },
]

/** Lines that say nothing are slips of the pen. */
const tidy = (draft: OwnFieldDraft): OwnFieldDraft => ({
  ...draft,
  choices: (draft.choices ?? []).map((line) => line.trim()).filter((line) => line !== ''),
})

interface OwnFieldSheetProps {
  /** Null: a new one. */
  readonly ownField: OwnField | null
  readonly onClose: () => void
}

/** A field that the workshop adds to its tools. */
export const OwnFieldSheet = ({ ownField, onClose }: OwnFieldSheetProps) => {
  const t = useTexts()
  const { name, kind = 'words', unit = '', choices = [] } = ownField ?? {}
  return (
    <Sheet title={ownField ? t('rack:sheet.edit', { name: ownField.name }) : t('rack:ownField.add')} onClose={onClose}>
      <RecordForm<OwnFieldDraft>
        texts="rack:field"
        fields={fields}
        start={{ name, kind, unit, choices }}
        saveLabel={t('rack:sheet.save')}
        onSave={(draft) => saveRecord('ownField', ownField, tidy(draft))}
        onDone={onClose}
      />
      {ownField && <RecordKeys noun="ownField" record={ownField} onClose={onClose} />}
    </Sheet>
  )
}

import type { CallInput } from '../../../main/contract/calls.ts'
import type { Purpose } from '../../../main/contract/extras.ts'
import { RecordForm } from '../../ui/RecordForm.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { saveRecord } from '../edits.ts'
import { RecordKeys } from '../RecordKeys.tsx'
import { purposeFields } from './fields.ts'

type PurposeDraft = CallInput<'purpose.add'>

interface PurposeSheetProps {
  /** Null: a new one. */
  readonly purpose: Purpose | null
  readonly onClose: () => void
}

/** What irons are ground for; each iron says by which curve. */
export const PurposeSheet = ({ purpose, onClose }: PurposeSheetProps) => {
  const t = useTexts()
  return (
    <Sheet title={purpose ? t('rack:sheet.edit', { name: purpose.name }) : t('rack:purpose.add')} onClose={onClose}>
      <RecordForm<PurposeDraft>
        texts="rack:field"
        fields={purposeFields}
        start={{ name: purpose?.name, note: purpose?.note ?? '' }}
        saveLabel={t('rack:sheet.save')}
        onSave={(draft) => saveRecord('purpose', purpose, draft)}
        onDone={onClose}
      />
      {purpose && <RecordKeys noun="purpose" record={purpose} onClose={onClose} />}
    </Sheet>
  )
}

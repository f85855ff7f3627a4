import { useApp } from '../../app/store.ts'
import { Tick } from '../../ui/Tick.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { OwnEntry } from '../toolSheet/OwnFields.tsx'

/** Values by the id of the field; null takes what is noted away. */
export type OwnSet = Readonly<Record<string, string | number | null>>

interface ManyOwnFieldsProps {
  readonly set: OwnSet
  readonly onSet: (set: OwnSet) => void
}

/** The workshop's own fields, each with the tick that takes it into a change of many tools. */
export const ManyOwnFields = ({ set, onSet }: ManyOwnFieldsProps) => {
  const t = useTexts()
  const fields = useApp((app) => app.ownFields)
  const tick = (id: string, next: boolean) => {
    const { [id]: _, ...others } = set
    onSet(next ? { ...others, [id]: null } : others)
  }
  return fields.map((field) => (
    <div key={field.id} className="many-field">
      <Tick
        name={t('many:set', { field: field.name })}
        checked={field.id in set}
        onTick={(next) => tick(field.id, next)}
      />
      {field.id in set && (
        <OwnEntry
          field={field}
          value={set[field.id] ?? undefined}
          onSet={(value) => onSet({ ...set, [field.id]: value === undefined || value === '' ? null : value })}
        />
      )}
    </div>
  ))
}

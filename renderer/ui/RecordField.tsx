import { NoteEntry, SelectEntry, TextEntry } from './Entry.tsx'
import { FigureField } from './FigureField.tsx'
import type { FieldSpec } from './fieldSpec.ts'
import { useTexts } from './texts.tsx'

interface RecordFieldProps<D> {
  /** Where the names of the fields stand in the catalogue: `<texts>.<key>`. */
  readonly texts: string
  readonly field: FieldSpec<D>
  readonly value: unknown
  readonly problem: string | null
  readonly onSet: (value: unknown) => void
}

/** One field of a record, as its kind wants it. */
export const RecordField = <D,>({ texts, field, value, problem, onSet }: RecordFieldProps<D>) => {
  const t = useTexts()
  const name = t(`${texts}.${field.key}`)
  if (field.kind === 'made') return <field.Field name={name} value={value} problem={problem} onChange={onSet} />
  if (field.kind === 'figure') {
    return (
      <FigureField
        quantity={field.quantity}
        label={name}
        size="small"
        value={(value as number | null | undefined) ?? null}
        allowEmpty={field.allowEmpty ?? false}
        problem={problem}
        onCommit={onSet}
      />
    )
  }
  const shared = { name, problem, value: String(value ?? ''), onChange: onSet }
  if (field.kind === 'words') return <TextEntry {...shared} required={field.required ?? false} />
  if (field.kind === 'note') return <NoteEntry {...shared} />
  if (field.kind === 'pick')
    return (
      <SelectEntry
        {...shared}
        options={[{ value: '', name: t('common:form.none') }, ...field.options]}
        onChange={(next) => onSet(next === '' ? null : next)}
      />
    )
  const options = field.options.map((option) => ({ value: option, name: t(`${field.texts}.${option}`) }))
  return <SelectEntry {...shared} options={options} />
}

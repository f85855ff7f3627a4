import { useId, useState } from 'react'
import { ok, type Problem, type Result } from '../../../geometry/result.ts'
import type { OwnField } from '../../../main/contract/extras.ts'
import { readFigure } from '../../../main/contract/typedFigure.ts'
import { useApp } from '../../app/store.ts'
import { SelectEntry, TextEntry } from '../../ui/Entry.tsx'
import type { MadeFieldProps } from '../../ui/fieldSpec.ts'
import { problemSentence, useTexts } from '../../ui/texts.tsx'

type Value = string | number | undefined

/** What the workshop notes of its tools beside all the rest: a field for each that it has made. */
export const OwnFields = ({ value, onChange }: MadeFieldProps) => {
  const fields = useApp((app) => app.ownFields)
  const own = (value as Readonly<Record<string, string | number>> | undefined) ?? {}
  const set = (id: string, next: Value) => {
    const { [id]: _, ...others } = own
    onChange(next === undefined || next === '' ? others : { ...others, [id]: next })
  }
  return fields.map((field) => (
    <OwnEntry key={field.id} field={field} value={own[field.id]} onSet={(next) => set(field.id, next)} />
  ))
}

interface OwnEntryProps {
  readonly field: OwnField
  readonly value: Value
  readonly onSet: (value: Value) => void
}

/** One of those fields, as its kind wants it. */
export const OwnEntry = ({ field, value, onSet }: OwnEntryProps) => {
  const t = useTexts()
  const name = field.unit === '' ? field.name : `${field.name} (${field.unit})`
  const words = String(value ?? '')
  if (field.kind === 'figure') return <OwnFigure name={name} value={value} onSet={onSet} />
  if (field.kind === 'day') return <DayEntry name={name} value={words} onChange={onSet} />
  if (field.kind === 'words') return <TextEntry name={name} value={words} onChange={onSet} />
  // A choice that the field no longer has is kept until another is made.
  const choices = [...new Set([...field.choices, ...(words === '' ? [] : [words])])]
  return (
    <SelectEntry
      name={name}
      value={words}
      options={[
        { value: '', name: t('rack:ownEntry.none') },
        ...choices.map((choice) => ({ value: choice, name: choice })),
      ]}
      onChange={onSet}
    />
  )
}

const readOwn = (typed: string): Result<number | undefined> =>
  typed.trim() === '' ? ok(undefined) : readFigure(typed, 'ratio', 'mm')

/** A figure without a place in the table of quantities: the workshop alone knows its unit. */
const OwnFigure = ({ name, value, onSet }: Omit<OwnEntryProps, 'field'> & { readonly name: string }) => {
  const t = useTexts()
  const [typed, setTyped] = useState(String(value ?? ''))
  const type = (next: string) => {
    setTyped(next)
    const figure = readOwn(next)
    if (figure.ok) onSet(figure.value)
  }
  const read = readOwn(typed)
  const problem = read.ok ? null : problemSentence(t, read.problems[0] as Problem)
  return <TextEntry name={name} value={typed} problem={problem} onChange={type} />
}

interface DayEntryProps {
  readonly name: string
  readonly value: string
  readonly onChange: (day: string) => void
}

const DayEntry = ({ name, value, onChange }: DayEntryProps) => {
  const id = useId()
  return (
    <div className="entry">
      <label className="entry-name" htmlFor={id}>
        {name}
      </label>
      <input id={id} type="date" value={value} onChange={(event) => onChange(event.target.value)} />
    </div>
  )
}

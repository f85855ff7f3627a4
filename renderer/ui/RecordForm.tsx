import { type FormEvent, useState } from 'react'
import { flushSync } from 'react-dom'
import type { QuantityPath } from '../../geometry/quantities.ts'
import type { Problem, Result } from '../../geometry/result.ts'
import { SelectEntry, TextEntry } from './Entry.tsx'
import { FigureField } from './FigureField.tsx'
import { Problems } from './Problems.tsx'
import { problemSentence, useTexts } from './texts.tsx'

/** A field of a record: a figure of the quantity table, words, or one of a few. */
export type FieldSpec<D> =
  | {
      readonly kind: 'figure'
      readonly key: keyof D & string
      readonly quantity: QuantityPath
      readonly allowEmpty?: boolean
    }
  | { readonly kind: 'words'; readonly key: keyof D & string; readonly required?: boolean }
  | {
      /** One of some records; empty: none of them. */
      readonly kind: 'pick'
      readonly key: keyof D & string
      readonly options: readonly { readonly value: string; readonly name: string }[]
    }
  | {
      readonly kind: 'choice'
      readonly key: keyof D & string
      readonly options: readonly string[]
      readonly texts: string
    }

interface RecordFormProps<D> {
  /** Where the names of the fields stand in the catalogue: `<texts>.<key>`. */
  readonly texts: string
  readonly fields: readonly FieldSpec<D>[]
  /** Figures that nobody knows yet are null until they are typed. */
  readonly start: Partial<Record<keyof D, unknown>>
  readonly saveLabel: string
  readonly onSave: (draft: D) => Promise<Result<unknown>>
  readonly onDone: () => void
}

type Values = Record<string, unknown>

const isEmpty = (value: unknown): boolean => value === null || value === undefined || value === ''

const lacks = <D,>(field: FieldSpec<D>, values: Values): boolean =>
  (field.kind === 'words' ? field.required === true : field.kind === 'figure' && !field.allowEmpty) &&
  isEmpty(values[field.key])

const missingIn = <D,>(fields: readonly FieldSpec<D>[], values: Values): readonly Problem[] =>
  fields.filter((field) => lacks(field, values)).map(({ key }) => ({ code: 'missing', path: key, params: {} }))

/** Goes to the first field with something wrong. @returns whether there is one */
const focusWrong = (form: HTMLElement): boolean => {
  const wrong = form.querySelector<HTMLElement>('[aria-invalid="true"]')
  wrong?.focus()
  return wrong !== null
}

/** A record's fields, saved together; what is missing or refused is said at its field. */
export const RecordForm = <D extends object>({
  texts,
  fields,
  start,
  saveLabel,
  onSave,
  onDone,
}: RecordFormProps<D>) => {
  const t = useTexts()
  const [values, setValues] = useState<Values>({ ...start })
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const set = (key: string, value: unknown) => {
    setValues((now) => ({ ...now, [key]: value }))
    setProblems((now) => now.filter(({ path }) => !path.endsWith(key)))
  }
  const save = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    const form = event.currentTarget
    const refuse = (found: readonly Problem[]) => {
      flushSync(() => setProblems(found))
      focusWrong(form)
    }
    if (focusWrong(form)) return
    const missing = missingIn(fields, values)
    if (missing.length > 0) return refuse(missing)
    const saved = await onSave(values as D)
    if (saved.ok) onDone()
    else refuse(saved.problems)
  }
  const at = (key: string): string | null => {
    const found = problems.find(({ path }) => path.split('.').at(-1) === key)
    return found ? problemSentence(t, found) : null
  }
  const elsewhere = problems.filter(({ path }) => !fields.some(({ key }) => path.split('.').at(-1) === key))
  return (
    <form onSubmit={(event) => void save(event)} noValidate>
      <div className="fields">
        {fields.map((field) => (
          <RecordField
            key={field.key}
            texts={texts}
            field={field}
            values={values}
            problem={at(field.key)}
            onSet={set}
          />
        ))}
      </div>
      <Problems problems={elsewhere} />
      <div className="sheet-keys">
        <button type="submit" className="key key-main">
          {saveLabel}
        </button>
        <p role="status">{problems.length > 0 ? t('common:form.notSaved') : ''}</p>
      </div>
    </form>
  )
}

interface RecordFieldProps<D> {
  readonly texts: string
  readonly field: FieldSpec<D>
  readonly values: Values
  readonly problem: string | null
  readonly onSet: (key: string, value: unknown) => void
}

const RecordField = <D,>({ texts, field, values, problem, onSet }: RecordFieldProps<D>) => {
  const t = useTexts()
  const name = t(`${texts}.${field.key}`)
  const value = values[field.key]
  if (field.kind === 'figure') {
    return (
      <FigureField
        quantity={field.quantity}
        label={name}
        size="small"
        value={(value as number | null | undefined) ?? null}
        allowEmpty={field.allowEmpty ?? false}
        problem={problem}
        onCommit={(next) => onSet(field.key, next)}
      />
    )
  }
  const shared = { name, problem, value: String(value ?? ''), onChange: (next: string) => onSet(field.key, next) }
  if (field.kind === 'words') return <TextEntry {...shared} required={field.required ?? false} />
  if (field.kind === 'pick')
    return (
      <SelectEntry
        {...shared}
        options={[{ value: '', name: t('common:form.none') }, ...field.options]}
        onChange={(next) => onSet(field.key, next === '' ? null : next)}
      />
    )
  const options = field.options.map((option) => ({ value: option, name: t(`${field.texts}.${option}`) }))
  return <SelectEntry {...shared} options={options} />
}

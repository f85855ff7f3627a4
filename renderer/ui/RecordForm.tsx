import { type FormEvent, type ReactNode, useState } from 'react'
import { flushSync } from 'react-dom'
import type { Problem, Result } from '../../geometry/result.ts'
import { type FieldSpec, sectionsOf } from './fieldSpec.ts'
import { Problems } from './Problems.tsx'
import { RecordField } from './RecordField.tsx'
import { problemSentence, useTexts } from './texts.tsx'

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
      {sectionsOf(fields).map(({ section, fields: each }) => (
        <Section key={section ?? ''} heading={section === undefined ? null : t(section)}>
          {each.map((field) => (
            <RecordField
              key={field.key}
              texts={texts}
              field={field}
              value={values[field.key]}
              problem={at(field.key)}
              onSet={(value) => set(field.key, value)}
            />
          ))}
        </Section>
      ))}
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

/** Fields that belong together, under their heading where they have one. */
const Section = ({ heading, children }: { readonly heading: string | null; readonly children: ReactNode }) =>
  heading === null ? (
    <div className="fields">{children}</div>
  ) : (
    <fieldset className="fields-section">
      <legend>{heading}</legend>
      <div className="fields">{children}</div>
    </fieldset>
  )

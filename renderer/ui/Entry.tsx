import { type ReactNode, useId } from 'react'

interface TextEntryProps {
  readonly name: ReactNode
  readonly value: string
  readonly onChange: (value: string) => void
  readonly required?: boolean
  readonly problem?: string | null
}

/** Most characters that a record keeps in a short text; the host's schema says the same. */
const SHORT_TEXT = 120

/** Words to type, their name above. */
export const TextEntry = ({ name, value, onChange, required = false, problem = null }: TextEntryProps) => {
  const id = useId()
  return (
    <div className="entry">
      <label className="entry-name" htmlFor={id}>
        {name}
      </label>
      <input
        id={id}
        type="text"
        value={value}
        required={required}
        maxLength={SHORT_TEXT}
        aria-invalid={problem !== null}
        aria-describedby={`${id}-problem`}
        onChange={(event) => onChange(event.target.value)}
      />
      <span className="figure-problem" id={`${id}-problem`}>
        {problem}
      </span>
    </div>
  )
}

/** Most characters of a note; the host's schema says the same. */
const LONG_TEXT = 4000

/** Words over several lines, their name above. */
export const NoteEntry = ({ name, value, onChange, problem = null }: Omit<TextEntryProps, 'required'>) => {
  const id = useId()
  return (
    <div className="entry entry-note">
      <label className="entry-name" htmlFor={id}>
        {name}
      </label>
      <textarea
        id={id}
        rows={3}
        value={value}
        maxLength={LONG_TEXT}
        aria-invalid={problem !== null}
        aria-describedby={`${id}-problem`}
        onChange={(event) => onChange(event.target.value)}
      />
      <span className="figure-problem" id={`${id}-problem`}>
        {problem}
      </span>
    </div>
  )
}

interface SelectEntryProps<T extends string> {
  readonly name: ReactNode
  readonly value: T
  readonly options: readonly { readonly value: T; readonly name: string }[]
  readonly onChange: (value: T) => void
  readonly problem?: string | null
}

/** One of many, its name above. */
export const SelectEntry = <T extends string>(props: SelectEntryProps<T>) => {
  const { name, value, options, onChange, problem = null } = props
  const id = useId()
  return (
    <div className="entry">
      <label className="entry-name" htmlFor={id}>
        {name}
      </label>
      <select
        id={id}
        value={value}
        aria-invalid={problem !== null}
        aria-describedby={`${id}-problem`}
        onChange={(event) => onChange(event.target.value as T)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.name}
          </option>
        ))}
      </select>
      <span className="figure-problem" id={`${id}-problem`}>
        {problem}
      </span>
    </div>
  )
}

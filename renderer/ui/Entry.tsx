import { type InputHTMLAttributes, type ReactNode, useId } from 'react'

interface EntryProps {
  readonly name: ReactNode
  readonly value: string
  readonly onChange: (value: string) => void
  /** In words. */
  readonly problem?: string | null
}

/** What a control needs of its frame: its id, and where its problem is told. */
interface Framed {
  readonly id: string
  readonly 'aria-invalid': boolean
  readonly 'aria-describedby': string
}

interface EntryFrameProps extends Pick<EntryProps, 'name' | 'problem'> {
  readonly wide?: boolean
  readonly children: (framed: Framed) => ReactNode
}

/** A control with its name above and its problem below. */
const EntryFrame = ({ name, problem = null, wide = false, children }: EntryFrameProps) => {
  const id = useId()
  return (
    <div className={wide ? 'entry entry-note' : 'entry'}>
      <label className="entry-name" htmlFor={id}>
        {name}
      </label>
      {children({ id, 'aria-invalid': problem !== null, 'aria-describedby': `${id}-problem` })}
      <span className="figure-problem" id={`${id}-problem`}>
        {problem}
      </span>
    </div>
  )
}

/** Most characters that a record keeps in a short text, and in a note; the host's schema says the same. */
const [SHORT_TEXT, LONG_TEXT] = [120, 4000] as const

interface TextEntryProps extends EntryProps {
  readonly required?: boolean
  /** Words that are offered while one types. */
  readonly offered?: readonly string[]
  readonly type?: Extract<InputHTMLAttributes<HTMLInputElement>['type'], 'text' | 'date'>
}

/** Words to type. */
export const TextEntry = ({ value, onChange, required = false, offered, type = 'text', ...frame }: TextEntryProps) => (
  <EntryFrame {...frame}>
    {({ id, ...framed }) => (
      <>
        <input
          id={id}
          {...framed}
          type={type}
          value={value}
          required={required}
          maxLength={SHORT_TEXT}
          list={offered && `${id}-offered`}
          onChange={(event) => onChange(event.target.value)}
        />
        {offered && (
          <datalist id={`${id}-offered`}>
            {offered.map((each) => (
              <option key={each} value={each} />
            ))}
          </datalist>
        )}
      </>
    )}
  </EntryFrame>
)

/** A day, as `YYYY-MM-DD`; empty: none. */
export const DayEntry = (props: EntryProps) => <TextEntry {...props} type="date" />

/** Words over several lines. */
export const NoteEntry = ({ value, onChange, ...frame }: EntryProps) => (
  <EntryFrame {...frame} wide>
    {(framed) => (
      <textarea
        {...framed}
        rows={3}
        value={value}
        maxLength={LONG_TEXT}
        onChange={(event) => onChange(event.target.value)}
      />
    )}
  </EntryFrame>
)

interface SelectEntryProps<T extends string> extends Pick<EntryProps, 'name' | 'problem'> {
  readonly value: T
  readonly options: readonly { readonly value: T; readonly name: string }[]
  readonly onChange: (value: T) => void
}

/** One of many. */
export const SelectEntry = <T extends string>({ value, options, onChange, ...frame }: SelectEntryProps<T>) => (
  <EntryFrame {...frame}>
    {(framed) => (
      <select {...framed} value={value} onChange={(event) => onChange(event.target.value as T)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.name}
          </option>
        ))}
      </select>
    )}
  </EntryFrame>
)

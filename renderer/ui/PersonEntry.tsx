import { useId } from 'react'
import { useApp } from '../app/store.ts'

interface PersonEntryProps {
  readonly name: string
  readonly value: string
  readonly onChange: (value: string) => void
  readonly required?: boolean
}

/** Most characters of a name; the host's schema says the same. */
const NAME_LENGTH = 120

/** A name, with those of the workshop's people offered. */
export const PersonEntry = ({ name, value, onChange, required = false }: PersonEntryProps) => {
  const id = useId()
  const people = useApp((app) => app.people)
  return (
    <div className="entry">
      <label className="entry-name" htmlFor={id}>
        {name}
      </label>
      <input
        id={id}
        type="text"
        list={`${id}-people`}
        required={required}
        maxLength={NAME_LENGTH}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
      <datalist id={`${id}-people`}>
        {people.map((each) => (
          <option key={each.id} value={each.name} />
        ))}
      </datalist>
    </div>
  )
}

import { useApp } from '../app/store.ts'
import { TextEntry } from './Entry.tsx'

interface PersonEntryProps {
  readonly name: string
  readonly value: string
  readonly onChange: (value: string) => void
  readonly required?: boolean
}

/** A name, with those of the workshop's people offered. */
export const PersonEntry = (props: PersonEntryProps) => {
  const people = useApp((app) => app.people)
  return <TextEntry {...props} offered={people.map(({ name }) => name)} />
}

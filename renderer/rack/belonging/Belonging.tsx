import { useState } from 'react'
import type { Person, Place } from '../../../main/contract/people.ts'
import { useApp } from '../../app/store.ts'
import { useTexts } from '../../ui/texts.tsx'
import { placePath } from '../placePath.ts'
import { PersonSheet } from './PersonSheet.tsx'
import { PlaceSheet } from './PlaceSheet.tsx'

type Opened =
  | { readonly noun: 'place'; readonly record: Place | null }
  | { readonly noun: 'person'; readonly record: Person | null }

/** Where tools belong and who has them: short lists under the rack. */
export const Belonging = () => {
  const t = useTexts()
  const places = useApp((app) => app.places)
  const people = useApp((app) => app.people)
  const [opened, setOpened] = useState<Opened | null>(null)
  const byPath = places
    .map((record) => ({ record, name: placePath(places, record.id) }))
    .sort((a, b) => a.name.localeCompare(b.name))
  const byName = people.map((record) => ({ record, name: record.name })).sort((a, b) => a.name.localeCompare(b.name))
  const apprentice = ({ apprentice }: Person) => (apprentice === 'yes' ? t('rack:person.apprentice') : '')
  const close = () => setOpened(null)
  return (
    <div className="places">
      <List noun="place" lines={byPath} onOpen={(record) => setOpened({ noun: 'place', record })} />
      <List
        noun="person"
        lines={byName}
        wordsOf={apprentice}
        onOpen={(record) => setOpened({ noun: 'person', record })}
      />
      {opened?.noun === 'place' && <PlaceSheet place={opened.record} onClose={close} />}
      {opened?.noun === 'person' && <PersonSheet person={opened.record} onClose={close} />}
    </div>
  )
}

interface ListProps<R> {
  readonly noun: 'place' | 'person'
  readonly lines: readonly { readonly record: R; readonly name: string }[]
  readonly wordsOf?: (record: R) => string
  readonly onOpen: (record: R | null) => void
}

const List = <R extends Place | Person>({ noun, lines, wordsOf, onOpen }: ListProps<R>) => {
  const t = useTexts()
  return (
    <section aria-label={t(`rack:${noun}.heading`)}>
      <h2>{t(`rack:${noun}.heading`)}</h2>
      <ul>
        {lines.map(({ record, name }) => (
          <li key={record.id}>
            <button type="button" className="word" onClick={() => onOpen(record)}>
              {record.code} <strong>{name}</strong>
            </button>
            <span className="muted">{wordsOf?.(record)}</span>
          </li>
        ))}
      </ul>
      <button type="button" className="word" onClick={() => onOpen(null)}>
        {t(`rack:${noun}.add`)}
      </button>
    </section>
  )
}

import { useState } from 'react'
import type { Person, Place } from '../../../main/contract/people.ts'
import { useApp } from '../../app/store.ts'
import { useTexts } from '../../ui/texts.tsx'
import { placePath } from '../placePath.ts'
import { RecordList } from '../RecordList.tsx'
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
    .map((record) => ({ record, name: placePath(places, record.id), words: '' }))
    .sort((a, b) => a.name.localeCompare(b.name))
  const byName = people
    .map((record) => ({
      record,
      name: record.name,
      words: record.apprentice === 'yes' ? t('rack:person.apprentice') : '',
    }))
    .sort((a, b) => a.name.localeCompare(b.name))
  const close = () => setOpened(null)
  return (
    <div className="places">
      <RecordList noun="place" lines={byPath} onOpen={(record) => setOpened({ noun: 'place', record })} />
      <RecordList noun="person" lines={byName} onOpen={(record) => setOpened({ noun: 'person', record })} />
      {opened?.noun === 'place' && <PlaceSheet place={opened.record} onClose={close} />}
      {opened?.noun === 'person' && <PersonSheet person={opened.record} onClose={close} />}
    </div>
  )
}

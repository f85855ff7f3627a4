import { useState } from 'react'
import type { OwnField, Purpose } from '../../../main/contract/extras.ts'
import { language } from '../../../main/contract/language.ts'
import type { Person, Place } from '../../../main/contract/people.ts'
import { placePath } from '../../../main/contract/placePath.ts'
import { useApp } from '../../app/store.ts'
import { useTexts } from '../../ui/texts.tsx'
import { RecordList } from '../RecordList.tsx'
import { OwnFieldSheet, PersonSheet, PlaceSheet, PurposeSheet } from '../sheets.tsx'

type Opened =
  | { readonly noun: 'place'; readonly record: Place | null }
  | { readonly noun: 'person'; readonly record: Person | null }
  | { readonly noun: 'purpose'; readonly record: Purpose | null }
  | { readonly noun: 'ownField'; readonly record: OwnField | null }

/** Where tools belong, who has them, what they are ground for, and what else is noted of them: short lists under the rack. */
export const Belonging = () => {
  const t = useTexts()
  const places = useApp((app) => app.places)
  const people = useApp((app) => app.people)
  const purposes = useApp((app) => app.purposes)
  const ownFields = useApp((app) => app.ownFields)
  const [opened, setOpened] = useState<Opened | null>(null)
  const byPath = places
    .map((record) => ({ record, name: placePath(places, record.id), words: '' }))
    .sort((a, b) => a.name.localeCompare(b.name, language()))
  const byName = people
    .map((record) => ({
      record,
      name: record.name,
      words: record.apprentice === 'yes' ? t('rack:person.apprentice') : '',
    }))
    .sort((a, b) => a.name.localeCompare(b.name, language()))
  const plain = purposes.map((record) => ({ record, name: record.name, words: record.note }))
  const fields = ownFields.map((record) => ({
    record,
    name: record.name,
    words: t(`rack:ownField.kindIs.${record.kind}`),
  }))
  const close = () => setOpened(null)
  return (
    <div className="places">
      <RecordList noun="place" lines={byPath} onOpen={(record) => setOpened({ noun: 'place', record })} />
      <RecordList noun="person" lines={byName} onOpen={(record) => setOpened({ noun: 'person', record })} />
      <RecordList noun="purpose" lines={plain} onOpen={(record) => setOpened({ noun: 'purpose', record })} />
      <RecordList noun="ownField" lines={fields} onOpen={(record) => setOpened({ noun: 'ownField', record })} />
      {opened?.noun === 'place' && <PlaceSheet place={opened.record} onClose={close} />}
      {opened?.noun === 'person' && <PersonSheet person={opened.record} onClose={close} />}
      {opened?.noun === 'purpose' && <PurposeSheet purpose={opened.record} onClose={close} />}
      {opened?.noun === 'ownField' && <OwnFieldSheet ownField={opened.record} onClose={close} />}
    </div>
  )
}

import { useState } from 'react'
import type { Person } from '../../main/contract/people.ts'
import type { Learning } from '../../main/contract/teaching.ts'
import { shortDate } from '../ui/dates.ts'
import { PersonEntry } from '../ui/PersonEntry.tsx'
import { useTexts } from '../ui/texts.tsx'
import { note } from './teacher.ts'

interface AuthorisationProps {
  readonly person: Person
  readonly learning: Learning
}

/** Whether somebody was shown wheel and grinder, and by whom; the teacher notes it, nobody else can. */
export const Authorisation = ({ person, learning }: AuthorisationProps) => {
  const t = useTexts()
  const [who, setWho] = useState('')
  const given = learning.authorisations.find(({ personId }) => personId === person.id)
  if (given)
    return (
      <p>
        {t('teach:authorised', { name: person.name, who: given.who, date: shortDate(given.at) })}{' '}
        <button
          type="button"
          className="word"
          onClick={() => void note('authorisation.take', { personId: person.id }, person.name)}
        >
          {t('teach:takeBack')}
        </button>
      </p>
    )
  return (
    <form
      className="teach-row-form"
      onSubmit={(event) => {
        event.preventDefault()
        void note('authorisation.give', { personId: person.id, who: who.trim() }, person.name)
      }}
    >
      <PersonEntry name={t('teach:authorise.who')} value={who} onChange={setWho} required />
      <button type="submit" className="key" disabled={who.trim() === ''}>
        {t('teach:authorise.note', { name: person.name })}
      </button>
    </form>
  )
}

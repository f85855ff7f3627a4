import { useState } from 'react'
import type { Person } from '../../main/contract/people.ts'
import type { Learning, LessonLine } from '../../main/contract/teaching.ts'
import { hashFor } from '../app/route.ts'
import { useApp } from '../app/store.ts'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { Authorisation } from './Authorisation.tsx'
import { OnPaper } from './OnPaper.tsx'
import { SetWork } from './SetWork.tsx'
import { Standing } from './Standing.tsx'
import './people.css'
import { makeFile } from './teacher.ts'
import { useLessons } from './useLessons.ts'

/** What a teacher looks at: who is how far, who may work at the wheel, what is set; and lessons on paper. */
export const PeoplePart = () => {
  const t = useTexts()
  const known = useLessons()
  const people = useApp((app) => app.people)
  const code = useApp((app) => app.tool?.code ?? null)
  if (!known) return <p className="page-note">{t('common:opening')}</p>
  return (
    <div className="teach-people">
      {people.length === 0 ? (
        <p className="sentence">
          {t('teach:people.none')} <a href={hashFor('rack', code)}>{t('teach:people.toRack')}</a>
        </p>
      ) : (
        <Everybody people={people} {...known} />
      )}
      <OnPaper lines={known.lines} />
    </div>
  )
}

interface KnownProps {
  readonly lines: readonly LessonLine[]
  readonly learning: Learning
}

const Everybody = ({ people, lines, learning }: KnownProps & { readonly people: readonly Person[] }) => {
  const t = useTexts()
  const [chosenId, setChosenId] = useState<string | null>(null)
  const person = people.find(({ id }) => id === chosenId) ?? (people[0] as Person)
  return (
    <section aria-labelledby="teach-people">
      <div className="teach-head">
        <h2 id="teach-people">{t('teach:people.heading')}</h2>
        <button type="button" className="word" onClick={() => void makeFile('progress.table', {})}>
          {t('teach:people.table')}
        </button>
      </div>
      <Options
        legend={t('teach:people.who')}
        hideLegend
        options={people.map(({ id, name }) => ({ value: id, name: `${name} (${doneBy(learning, id)})` }))}
        value={person.id}
        onChoose={setChosenId}
      />
      <Authorisation person={person} learning={learning} />
      <SetWork key={person.id} person={person} lines={lines} learning={learning} />
      <Standing person={person} lines={lines} learning={learning} />
    </section>
  )
}

/** How many lessons somebody has done. */
const doneBy = ({ progress }: Learning, personId: string): number =>
  progress.filter((line) => line.personId === personId && line.doneAt !== null).length

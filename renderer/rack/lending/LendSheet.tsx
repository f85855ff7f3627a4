import { type FormEvent, useId, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import { useApp } from '../../app/store.ts'
import { lend } from '../../app/storeRack.ts'
import { Problems } from '../../ui/Problems.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'

interface LendSheetProps {
  readonly toolIds: readonly string[]
  readonly title: string
  readonly onClose: () => void
}

/** Who gets tools, and until when. A name that nobody has yet is put among the workshop's people. */
export const LendSheet = ({ toolIds, title, onClose }: LendSheetProps) => {
  const t = useTexts()
  const id = useId()
  const people = useApp((app) => app.people)
  const [person, setPerson] = useState('')
  const [dueBack, setDueBack] = useState('')
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const save = async (event: FormEvent) => {
    event.preventDefault()
    const lent = await lend(toolIds, person, dueBack === '' ? null : dueBack)
    if (lent.ok) onClose()
    else setProblems(lent.problems)
  }
  return (
    <Sheet title={title} onClose={onClose}>
      <form onSubmit={(event) => void save(event)}>
        <div className="fields">
          <div className="entry">
            <label className="entry-name" htmlFor={`${id}-person`}>
              {t('rack:lend.person')}
            </label>
            <input
              id={`${id}-person`}
              type="text"
              list={`${id}-people`}
              required
              maxLength={120}
              value={person}
              onChange={(event) => setPerson(event.target.value)}
            />
            <datalist id={`${id}-people`}>
              {people.map((each) => (
                <option key={each.id} value={each.name} />
              ))}
            </datalist>
          </div>
          <div className="entry">
            <label className="entry-name" htmlFor={`${id}-back`}>
              {t('rack:lend.dueBack')}
            </label>
            <input id={`${id}-back`} type="date" value={dueBack} onChange={(event) => setDueBack(event.target.value)} />
          </div>
        </div>
        <Problems problems={problems} />
        <button type="submit" className="key key-main">
          {t('rack:lend.save')}
        </button>
      </form>
    </Sheet>
  )
}

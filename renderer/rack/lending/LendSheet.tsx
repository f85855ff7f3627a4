import { type FormEvent, useId, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import { PersonEntry } from '../../ui/PersonEntry.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { lend } from '../edits.ts'

interface LendSheetProps {
  readonly toolIds: readonly string[]
  readonly title: string
  readonly onClose: () => void
}

/** Who gets tools, and until when. A name that nobody has yet is put among the workshop's people. */
export const LendSheet = ({ toolIds, title, onClose }: LendSheetProps) => {
  const t = useTexts()
  const id = useId()
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
          <PersonEntry name={t('rack:lend.person')} value={person} onChange={setPerson} required />
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

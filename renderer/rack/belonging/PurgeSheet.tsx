import { useEffect, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { CallOutput } from '../../../main/contract/calls.ts'
import type { Person } from '../../../main/contract/people.ts'
import { call } from '../../app/transport.ts'
import { momentText } from '../../ui/dates.ts'
import { Problems } from '../../ui/Problems.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { Tick } from '../../ui/Tick.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { purgePerson } from '../edits.ts'

type Traces = CallOutput<'person.traces'>

interface PurgeSheetProps {
  readonly person: Person
  readonly onClose: () => void
}

/** Takes somebody out for good: says first where the name stands, and how far it is to go. */
export const PurgeSheet = ({ person, onClose }: PurgeSheetProps) => {
  const t = useTexts()
  const [traces, setTraces] = useState<Traces | null>(null)
  const [inNotes, setInNotes] = useState(true)
  const [dropCopies, setDropCopies] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  useEffect(() => {
    void call('person.traces', { id: person.id }).then((found) =>
      found.ok ? setTraces(found.value) : setProblems(found.problems),
    )
  }, [person.id])
  const purge = async (): Promise<void> => {
    setBusy(true)
    const gone = await purgePerson(person, inNotes, dropCopies)
    setBusy(false)
    if (gone.ok) onClose()
    else setProblems(gone.problems)
  }
  return (
    <Sheet title={t('people:title', { name: person.name })} onClose={onClose}>
      <div className="purge">
        <p>{t('people:what', { name: person.name, code: person.code })}</p>
        <p>{t('people:learnt')}</p>
        {traces && (
          <>
            <TracesInWords traces={traces} name={person.name} />
            {traces.notes.length > 0 && (
              <Tick name={t('people:inNotes', { code: person.code })} checked={inNotes} onTick={setInNotes} />
            )}
            {traces.copies.length > 0 && (
              <Tick
                name={t('people:dropCopies', { count: traces.copies.length })}
                checked={dropCopies}
                onTick={setDropCopies}
              />
            )}
          </>
        )}
        <Problems problems={problems} />
        <p className="caution">{t('people:forGood')}</p>
        <button type="button" className="key" disabled={busy || !traces} onClick={() => void purge()}>
          {t('people:purge')}
        </button>
      </div>
    </Sheet>
  )
}

/** Most codes that are said one by one. */
const MOST_CODES = 12

const TracesInWords = ({ traces, name }: { readonly traces: Traces; readonly name: string }) => {
  const t = useTexts()
  const { lines, loans, notes, copies } = traces
  const codes = notes.slice(0, MOST_CODES).join(', ') + (notes.length > MOST_CODES ? ' …' : '')
  return (
    <ul>
      <li>{t('people:lines', { count: lines })}</li>
      <li>{t('people:loans', { count: loans })}</li>
      {notes.length > 0 && <li>{t('people:notes', { count: notes.length, codes })}</li>}
      {copies.length > 0 && (
        <li>
          {t('people:copies', { count: copies.length, name })} {copies.map(({ at }) => momentText(at)).join(', ')}
        </li>
      )}
    </ul>
  )
}

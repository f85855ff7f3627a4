import { type FormEvent, useEffect, useState } from 'react'
import type { KeptFilter } from '../../main/contract/extras.ts'
import { filterSchema, sortColumns } from '../../main/contract/finding.ts'
import { say, sayProblem, useApp } from '../app/store.ts'
import { call } from '../app/transport.ts'
import { useTexts } from '../ui/texts.tsx'
import { everything, type Finding, useFinding } from './finding.ts'

/** @returns what a kept filter asks; what a newer program kept and this one does not know asks for everything */
const askedBy = ({ asked }: KeptFilter): Finding => {
  const read = JSON.parse(asked) as Partial<Finding>
  const filter = filterSchema.safeParse(read.filter)
  const sort = sortColumns.find((column) => column === read.sort) ?? everything.sort
  return {
    typed: typeof read.typed === 'string' ? read.typed : '',
    filter: filter.success ? filter.data : {},
    sort,
    descending: read.descending === true,
  }
}

const useKept = (): readonly KeptFilter[] => {
  const [kept, setKept] = useState<readonly KeptFilter[]>([])
  const changes = useApp((app) => app.rackChanges)
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change is the trigger
  useEffect(() => {
    void call('keptFilter.list', {}).then((listed) => listed.ok && setKept(listed.value))
  }, [changes])
  return kept
}

/** Ways of looking at the rack that somebody gave a name. */
export const KeptFilters = () => {
  const t = useTexts()
  const kept = useKept()
  return (
    <div className="kept-filters">
      {kept.length > 0 && (
        <ul aria-label={t('rack:kept.heading')}>
          {kept.map((each) => (
            <li key={each.id}>
              <button type="button" className="word" onClick={() => useFinding.setState(askedBy(each))}>
                {each.name}
              </button>
              <button
                type="button"
                className="word muted"
                aria-label={t('rack:kept.removeOf', { name: each.name })}
                onClick={() => void remove(each)}
              >
                {t('rack:kept.remove')}
              </button>
            </li>
          ))}
        </ul>
      )}
      <KeepForm />
    </div>
  )
}

const remove = async ({ id, version, name }: KeptFilter): Promise<void> => {
  const removed = await call('keptFilter.remove', { id, version })
  if (removed.ok) say('rack:kept.removed', { name }, removed.value.changeId)
  else if (removed.problems[0]) sayProblem(removed.problems[0])
}

const KeepForm = () => {
  const t = useTexts()
  const [name, setName] = useState('')
  const keep = async (event: FormEvent) => {
    event.preventDefault()
    const made = await call('keptFilter.add', { name, asked: JSON.stringify(useFinding.getState()) })
    if (!made.ok) return made.problems[0] && sayProblem(made.problems[0])
    setName('')
    say('rack:kept.added', { name: made.value.value.name }, made.value.changeId)
  }
  return (
    <form onSubmit={(event) => void keep(event)}>
      <label className="entry-name" htmlFor="keep-filter">
        {t('rack:kept.name')}
      </label>
      <input
        id="keep-filter"
        type="text"
        required
        maxLength={120}
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <button type="submit" className="key">
        {t('rack:kept.keep')}
      </button>
      <button type="button" className="word" onClick={() => useFinding.setState(everything)}>
        {t('rack:narrow.nothing')}
      </button>
    </form>
  )
}

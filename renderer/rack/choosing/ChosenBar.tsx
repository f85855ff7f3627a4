import { useState } from 'react'
import { problem } from '../../../geometry/result.ts'
import { sayProblem } from '../../app/store.ts'
import { enqueue } from '../../app/storeDay.ts'
import { useTask } from '../../app/useTask.ts'
import { useTexts } from '../../ui/texts.tsx'
import { removeMany } from '../edits.ts'
import { openLabels } from '../labels/useLabels.ts'
import { LendSheet, ManySheet } from '../sheets.tsx'
import { beginChoosing, countChosen, idsChosen, letGo, useChosen, whichChosen } from './chosen.ts'
import { useCounted } from './useCounted.ts'
import { Working } from './Working.tsx'
import './choosing.css'

/** Most that are named one by one: labels some sheets full, loans for a whole class, a queue as long as any. */
const most = { lend: 1000, labels: 1000, queue: 500 } as const

/** How many tools are chosen, and what can be done with all of them. */
export const ChosenBar = () => {
  const t = useTexts()
  const chosen = useChosen()
  useCounted(chosen.all)
  const [sheet, setSheet] = useState<'change' | readonly string[] | null>(null)
  const count = countChosen(chosen)
  const task = useTask()
  const remove = async () => {
    const removed = await task.run((callId) => removeMany(whichChosen(chosen), callId))
    if (removed.ok) letGo()
    else if (removed.problems[0]) sayProblem(removed.problems[0])
  }
  /** Does something with the chosen ones by name; rather nothing than something with some of them. */
  const withIds = (key: keyof typeof most, work: (ids: readonly string[]) => unknown) => async () => {
    if (count > most[key]) return sayProblem(problem('tooManyChosen', '', { most: most[key] }))
    work(await idsChosen(chosen, most[key]))
  }
  const queue = async (ids: readonly string[]) => {
    const put = await enqueue(ids, t('day:irons', { count: ids.length }))
    if (!put.ok && put.problems[0]) sayProblem(put.problems[0])
  }
  const keys: readonly (readonly [string, () => unknown])[] = [
    ['change', () => setSheet('change')],
    ['lend', withIds('lend', setSheet)],
    ['queue', withIds('queue', queue)],
    ['labels', withIds('labels', (ids) => openLabels(ids.map((id) => ({ noun: 'tool', id }))))],
    ['remove', remove],
  ]
  // The words stand in the same place before anything is chosen: only what is there already is read out when it changes.
  return (
    <div className="chosen-bar" role="toolbar" aria-label={t('many:bar')}>
      <span role="status">{chosen.on && t('many:chosen', { count })}</span>
      {!chosen.on && (
        <button type="button" className="word" onClick={beginChoosing}>
          {t('many:begin')}
        </button>
      )}
      {chosen.on &&
        keys.map(([name, act]) => (
          <button
            key={name}
            type="button"
            className="word"
            disabled={count === 0 || task.done !== null}
            onClick={() => void act()}
          >
            {t(`many:key.${name}`)}
          </button>
        ))}
      {chosen.on && (
        <button type="button" className="word" onClick={letGo}>
          {t('many:letGo')}
        </button>
      )}
      <Working task={task} says={t('many:removing', { count })} />
      {sheet === 'change' && <ManySheet which={whichChosen(chosen)} count={count} onClose={() => setSheet(null)} />}
      {sheet !== null && sheet !== 'change' && (
        <LendSheet
          toolIds={sheet}
          title={t('many:lendTitle', { count: sheet.length })}
          onClose={() => setSheet(null)}
        />
      )}
    </div>
  )
}

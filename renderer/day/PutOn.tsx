import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { CallInput } from '../../main/contract/calls.ts'
import { MOST_LINES } from '../../main/contract/finding.ts'
import type { FoundByCode } from '../../main/contract/labels.ts'
import { sayProblem, useApp } from '../app/store.ts'
import { carryOver, enqueue } from '../app/storeDay.ts'
import { call } from '../app/transport.ts'
import { useFinding } from '../rack/finding.ts'
import { CodeEntry } from '../scan/CodeEntry.tsx'
import { useTexts } from '../ui/texts.tsx'

interface PutOnProps {
  readonly onDay: string
  readonly leftOver: number
}

const orSay = async (doing: Promise<Result<unknown>>): Promise<void> => {
  const done = await doing
  if (!done.ok && done.problems[0]) sayProblem(done.problems[0])
}

/** Ways to put irons on the day: by code, the tool in hand, all that is due, what is found on the rack, what was left. */
export const PutOn = ({ onDay, leftOver }: PutOnProps) => {
  const t = useTexts()
  const held = useApp((app) => app.tool)
  const { due } = useApp((app) => app.standing)
  const { typed, filter } = useFinding()
  const put = async ({ noun, id, code, name }: FoundByCode) =>
    noun === 'tool' ? enqueue([id], name, onDay) : failed(problem('codeNoTool', '', { code }))
  const found = async (asked: CallInput<'tool.find'>): Promise<Result<unknown>> => {
    const answer = await call('tool.find', { ...asked, limit: MOST_LINES })
    if (!answer.ok) return answer
    const ids = answer.value.tools.map(({ id }) => id)
    return ids.length === 0 ? ok(null) : enqueue(ids, t('day:irons', { count: ids.length }), onDay)
  }
  const narrowed = typed !== '' || Object.keys(filter).length > 0
  return (
    <section className="day-put" aria-label={t('day:putOn')}>
      <CodeEntry name={t('day:code')} action={t('day:put')} onFound={put} camera />
      <div className="day-put-keys">
        {held && (
          <button type="button" className="word" onClick={() => void orSay(enqueue([held.id], held.name, onDay))}>
            {t('day:inHand', { code: held.code })}
          </button>
        )}
        {due > 0 && (
          <button type="button" className="word" onClick={() => void orSay(found({ filter: { due: 'any' } }))}>
            {t('day:due', { count: due })}
          </button>
        )}
        {narrowed && (
          <button type="button" className="word" onClick={() => void orSay(found({ search: typed, filter }))}>
            {t('day:found')}
          </button>
        )}
        {leftOver > 0 && (
          <button
            type="button"
            className="word"
            onClick={() => void orSay(carryOver(onDay, t('day:irons', { count: leftOver })))}
          >
            {t('day:carry', { count: leftOver })}
          </button>
        )}
      </div>
    </section>
  )
}

import { MOST_LINES } from '../../main/contract/finding.ts'
import { sayProblem } from '../app/store.ts'
import { enqueue } from '../app/storeDay.ts'
import { call } from '../app/transport.ts'
import { useTexts } from '../ui/texts.tsx'

/** Puts what is due on today's queue in one touch; of very many, those that press most. @param due how many are */
export const PutAllOn = ({ due }: { readonly due: number }) => {
  const t = useTexts()
  const put = async () => {
    const found = await call('tool.find', { filter: { due: 'any' }, sort: 'due', limit: MOST_LINES })
    if (!found.ok) return found.problems[0] && sayProblem(found.problems[0])
    const ids = found.value.tools.map(({ id }) => id)
    if (ids.length === 0) return
    const done = await enqueue(ids, t('day:irons', { count: ids.length }))
    if (!done.ok && done.problems[0]) sayProblem(done.problems[0])
  }
  return (
    <button type="button" className="key" onClick={() => void put()}>
      {due > MOST_LINES ? t('due:putFirst', { count: MOST_LINES }) : t('due:putAll')}
    </button>
  )
}

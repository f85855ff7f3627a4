import { useCallback, useEffect, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { ToolDraft } from '../../../main/contract/entities.ts'
import type { ToolTemplate } from '../../../main/contract/extras.ts'
import { call } from '../../app/transport.ts'
import { SelectEntry } from '../../ui/Entry.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { newTool } from '../drafts.ts'
import { forgetPattern } from '../edits.ts'
import { readPattern } from './pattern.ts'

interface PatternChoiceProps {
  /** Empty: common practice. */
  readonly chosen: string
  readonly onChoose: (id: string, begin: Partial<ToolDraft>) => void
}

/** What a new tool begins with: common practice, or a pattern that the workshop keeps. Nothing where it keeps none. */
export const PatternChoice = ({ chosen, onChoose }: PatternChoiceProps) => {
  const t = useTexts()
  const [patterns, setPatterns] = useState<readonly ToolTemplate[]>([])
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const read = useCallback(async () => {
    const listed = await call('toolTemplate.list', {})
    if (listed.ok) setPatterns(listed.value)
    else setProblems(listed.problems)
  }, [])
  useEffect(() => void read(), [read])
  const choose = (id: string) => {
    const pattern = patterns.find((each) => each.id === id)
    const begin = pattern && readPattern(pattern.draft)
    setProblems(begin && !begin.ok ? begin.problems : [])
    onChoose(id, { ...newTool, ...(begin?.ok && begin.value) })
  }
  const forget = async (pattern: ToolTemplate) => {
    const forgotten = await forgetPattern(pattern)
    if (!forgotten.ok) return setProblems(forgotten.problems)
    choose('')
    await read()
  }
  if (patterns.length === 0) return null
  const pattern = patterns.find(({ id }) => id === chosen)
  const options = [
    { value: '', name: t('rack:patterns.usual') },
    ...patterns.map(({ id, name }) => ({ value: id, name })),
  ]
  return (
    <div className="pattern-choice">
      <SelectEntry name={t('rack:patterns.begin')} value={chosen} options={options} onChange={choose} />
      {pattern && (
        <button type="button" className="word" onClick={() => void forget(pattern)}>
          {t('rack:patterns.forget')}
        </button>
      )}
      <Problems problems={problems} />
    </div>
  )
}

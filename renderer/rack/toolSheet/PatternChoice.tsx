import { useCallback, useEffect, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { ToolDraft } from '../../../main/contract/entities.ts'
import type { ToolTemplate } from '../../../main/contract/extras.ts'
import { useApp } from '../../app/store.ts'
import { call } from '../../app/transport.ts'
import { SelectEntry, TextEntry } from '../../ui/Entry.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { newTool } from '../drafts.ts'
import { forgetPattern, renamePattern } from '../edits.ts'
import { readPattern } from './pattern.ts'

interface PatternChoiceProps {
  /** Empty: common practice. */
  readonly chosen: string
  readonly onChoose: (id: string, begin: Partial<ToolDraft>) => void
}

const idsOf = (records: readonly { readonly id: string }[]): ReadonlySet<string> => new Set(records.map(({ id }) => id))

/** What a new tool begins with: common practice, or a pattern that the workshop keeps. Nothing where it keeps none. */
export const PatternChoice = ({ chosen, onChoose }: PatternChoiceProps) => {
  const t = useTexts()
  const places = useApp((app) => app.places)
  const purposes = useApp((app) => app.purposes)
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
    const standing = { places: idsOf(places), purposes: idsOf(purposes) }
    const begin = pattern && readPattern(pattern.draft, standing)
    setProblems(begin && !begin.ok ? begin.problems : [])
    onChoose(id, { ...newTool, ...(begin?.ok && begin.value) })
  }
  const rename = async (pattern: ToolTemplate, name: string) => {
    const renamed = await renamePattern(pattern, name)
    if (!renamed.ok) return setProblems(renamed.problems)
    setProblems([])
    await read()
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
        <>
          <PatternName
            key={pattern.id + pattern.name}
            pattern={pattern}
            onRename={(name) => void rename(pattern, name)}
          />
          <button type="button" className="word" onClick={() => void forget(pattern)}>
            {t('rack:patterns.forget')}
          </button>
        </>
      )}
      <Problems problems={problems} />
    </div>
  )
}

interface PatternNameProps {
  readonly pattern: ToolTemplate
  readonly onRename: (name: string) => void
}

/** What a pattern is called. */
const PatternName = ({ pattern, onRename }: PatternNameProps) => {
  const t = useTexts()
  const [name, setName] = useState(pattern.name)
  const wanted = name.trim()
  return (
    <>
      <TextEntry name={t('rack:patterns.called')} value={name} onChange={setName} />
      <button
        type="button"
        className="word"
        disabled={wanted === '' || wanted === pattern.name}
        onClick={() => onRename(wanted)}
      >
        {t('rack:patterns.rename')}
      </button>
    </>
  )
}

import { type FormEvent, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { Tool } from '../../../main/contract/entities.ts'
import { TextEntry } from '../../ui/Entry.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { toolDraftOf } from '../drafts.ts'
import { keepPattern } from '../edits.ts'
import { patternOf } from './pattern.ts'

/** Keeps a tool as the beginning of others of its kind. */
export const KeepPattern = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const [name, setName] = useState('')
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const keep = async (event: FormEvent) => {
    event.preventDefault()
    const kept = await keepPattern(name, patternOf(toolDraftOf(tool)))
    setProblems(kept.ok ? [] : kept.problems)
    if (kept.ok) setName('')
  }
  return (
    <form className="pattern-choice" onSubmit={(event) => void keep(event)}>
      <TextEntry name={t('rack:patterns.name')} value={name} onChange={setName} />
      <button type="submit" className="word" disabled={name.trim() === ''}>
        {t('rack:patterns.keep')}
      </button>
      <Problems problems={problems} />
    </form>
  )
}

import { type FormEvent, useState } from 'react'
import type { Problem } from '../../geometry/result.ts'
import { type BenchLogDraft, stages, type Tool } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { addReading } from '../app/storeRack.ts'
import { TextEntry } from '../ui/Entry.tsx'
import { FigureField } from '../ui/FigureField.tsx'
import { Options } from '../ui/Options.tsx'
import { problemSentence, useTexts } from '../ui/texts.tsx'

interface ReadingFormProps {
  readonly tool: Tool
  readonly onAdded: () => Promise<void>
}

type Leaves = Pick<BenchLogDraft, 'reliefLeftMm' | 'reliefRightMm'>
const noLeaves: Leaves = { reliefLeftMm: null, reliefRightMm: null }

/** A reading in under ten seconds: stage, the leaves that pass left and right, a note. */
export const ReadingForm = ({ tool, onAdded }: ReadingFormProps) => {
  const t = useTexts()
  const jobId = useApp((app) => app.job?.id ?? null)
  const [stage, setStage] = useState<BenchLogDraft['stage']>('asFound')
  const [leaves, setLeaves] = useState<Leaves>(noLeaves)
  const [note, setNote] = useState('')
  const [problem, setProblem] = useState<Problem | null>(null)
  const add = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    const wrong = event.currentTarget.querySelector<HTMLElement>('[aria-invalid="true"]')
    if (wrong) return wrong.focus()
    if (leaves.reliefLeftMm === null && leaves.reliefRightMm === null) {
      return setProblem({ code: 'missing', path: '', params: {} })
    }
    const added = await addReading({ toolId: tool.id, jobId, stage, ...leaves, who: '', note }, tool.name)
    if (!added.ok) return setProblem(added.problems[0] ?? null)
    setProblem(null)
    setLeaves(noLeaves)
    setNote('')
    await onAdded()
  }
  const leaf = (key: keyof Leaves, label: string) => (
    <FigureField
      quantity="aim.reliefMm"
      size="small"
      label={label}
      allowEmpty
      value={leaves[key]}
      onCommit={(value) => setLeaves((now) => ({ ...now, [key]: value }))}
    />
  )
  return (
    <form className="reading" onSubmit={(event) => void add(event)}>
      <Options
        legend={t('rack:log.add')}
        options={stages.map((value) => ({ value, name: t(`common:stage.${value}`) }))}
        value={stage}
        onChoose={setStage}
      />
      <div className="reading-leaves">
        {leaf('reliefLeftMm', t('rack:log.left'))}
        {leaf('reliefRightMm', t('rack:log.right'))}
      </div>
      <TextEntry name={t('rack:log.note')} value={note} onChange={setNote} />
      {problem && (
        <p className="caution" role="alert">
          {problemSentence(t, problem)}
        </p>
      )}
      <button type="submit" className="key">
        {t('rack:log.save')}
      </button>
    </form>
  )
}

import { useId, useState } from 'react'
import type { Ask } from '../../../geometry/lesson/lesson.ts'
import type { Problem } from '../../../geometry/result.ts'
import { readField } from '../../ui/fieldDraft.ts'
import { problemSentence, useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { AnsweringProps } from './Asked.tsx'

/** Beyond this nothing in a workshop is: a slip of the pen. */
const MOST = 10_000

/** A figure said before it is seen. */
export const Predict = ({ ask, findings, onAnswer }: AnsweringProps<Extract<Ask, { kind: 'predict' }>>) => {
  const t = useTexts()
  const id = useId()
  const figures = useFigures()
  const [text, setText] = useState('')
  const [problem, setProblem] = useState<Problem | null>(null)
  const asked = findings?.values[ask.figure]
  if (!asked) return null
  const { unit, decimals } = asked
  const commit = () => {
    const read = readField(text, { unit, decimals, min: -MOST, max: MOST }, figures.lengthUnit, false)
    setProblem(read.ok ? null : (read.problems[0] ?? null))
    if (read.ok && read.value !== null) onAnswer({ kind: 'predict', value: read.value })
  }
  return (
    <form
      className="teach-predict"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        commit()
      }}
    >
      <label htmlFor={id}>{t('teach:guess')}</label>
      <span className="teach-figure">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          maxLength={40}
          size={8}
          value={text}
          aria-invalid={problem !== null}
          aria-describedby={`${id}-problem`}
          onChange={(event) => {
            setText(event.target.value)
            setProblem(null)
          }}
        />
        {figures.plain(0, unit, decimals).unit}
      </span>
      {unit === 'ratio' && <span className="muted">{t('teach:share')}</span>}
      <span className="figure-problem" id={`${id}-problem`} role={problem ? 'alert' : undefined}>
        {problem && problemSentence(t, problem)}
      </span>
      <button type="submit" className="key key-main">
        {t('teach:answer')}
      </button>
    </form>
  )
}

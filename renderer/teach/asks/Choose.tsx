import { useId, useState } from 'react'
import type { Ask } from '../../../geometry/lesson/lesson.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFilled } from '../useFilled.ts'
import type { AnsweringProps } from './Asked.tsx'

/** One of several, and a key that says it: nothing is given away by a slip. */
export const Choose = ({ ask, findings, onAnswer }: AnsweringProps<Extract<Ask, { kind: 'choose' }>>) => {
  const t = useTexts()
  const name = useId()
  const text = useFilled(findings?.values ?? null)
  const [choice, setChoice] = useState<number | null>(null)
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        if (choice !== null) onAnswer({ kind: 'choose', choice })
      }}
    >
      <fieldset className="teach-choices">
        <legend className="unseen">{text(ask.question)}</legend>
        {ask.choices.map((each, k) => (
          <label key={each.text}>
            <input type="radio" name={name} checked={choice === k} onChange={() => setChoice(k)} />
            {text(each.text)}
          </label>
        ))}
      </fieldset>
      <button type="submit" className="key key-main" disabled={choice === null || findings === null}>
        {t('teach:answer')}
      </button>
    </form>
  )
}

import { useRef } from 'react'
import { type Ask, showsModel } from '../../../geometry/lesson/lesson.ts'
import { type Answer, markOf } from '../../../geometry/lesson/mark.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFocusKept } from '../../ui/useFocusKept.ts'
import type { StepProps } from '../LessonRun.tsx'
import { Moves } from '../Moves.tsx'
import { askAgain, say, showHint } from '../teaching.ts'
import { useFilled } from '../useFilled.ts'
import { Choose } from './Choose.tsx'
import { Draw } from './Draw.tsx'
import { Predict } from './Predict.tsx'
import { Verdict } from './Verdict.tsx'

export interface AskedProps extends StepProps {
  readonly ask: Ask
}

/** What every way of answering is given. */
export interface AnsweringProps<A extends Ask> extends StepProps {
  readonly ask: A
  readonly onAnswer: (answer: Answer) => void
}

/** The question of a step: asked, answered, shown, and told how far off. */
export const Asked = (props: AskedProps) => {
  const t = useTexts()
  const { ask, step, findings, teaching } = props
  const text = useFilled(findings?.values ?? null)
  const section = useRef<HTMLElement>(null)
  const { stage, hints, moved } = teaching
  useFocusKept(section, `${stage} ${hints} ${Object.keys(moved).length}`)
  const answer = (given: Answer) => {
    if (!findings) return
    // What is moved until it fits has run already, as often as it was moved; a drawing is there at once.
    const runs = step.run && ask.kind !== 'reach' && showsModel(step)
    say(given, markOf(ask, given, findings.values, findings.edgeMm), runs)
  }
  return (
    <section className="teach-ask" ref={section} tabIndex={-1} aria-label={t('teach:question')}>
      <p className="teach-question">{text(ask.question)}</p>
      {step.move.length > 0 && <Moves {...props} />}
      {/* There before anything is said in it: what comes into it is read out. */}
      <div role="status">
        {stage === 'asking' && teaching.seed > 0 && <p>{t('teach:otherFigures')}</p>}
        {stage === 'running' && <p>{t('teach:running')}</p>}
        {stage === 'told' && <Verdict {...props} />}
      </div>
      {stage === 'asking' && <Answering {...props} onAnswer={answer} />}
      {stage === 'told' && !teaching.mark?.right && (
        <button type="button" className="key" onClick={askAgain}>
          {t('teach:again')}
        </button>
      )}
      {teaching.stage !== 'running' && !teaching.mark?.right && (
        <Hints hints={ask.hints.map((hint) => text(hint))} shown={teaching.hints} />
      )}
    </section>
  )
}

const Answering = ({ ask, ...props }: AskedProps & { readonly onAnswer: (answer: Answer) => void }) => {
  const t = useTexts()
  switch (ask.kind) {
    case 'choose':
      return <Choose ask={ask} {...props} />
    case 'predict':
      return <Predict ask={ask} {...props} />
    case 'draw':
      return <Draw ask={ask} {...props} />
    case 'reach':
      return (
        <button
          type="button"
          className="key key-main"
          disabled={props.findings === null}
          onClick={() => props.onAnswer({ kind: 'reach' })}
        >
          {t('teach:check')}
        </button>
      )
  }
}

const Hints = ({ hints, shown }: { readonly hints: readonly string[]; readonly shown: number }) => {
  const t = useTexts()
  return (
    <div className="teach-hints" role="status">
      {hints.slice(0, shown).map((hint) => (
        <p key={hint}>{hint}</p>
      ))}
      {shown < hints.length && (
        <button type="button" className="word" onClick={showHint}>
          {t(shown === 0 ? 'teach:hint' : 'teach:anotherHint')}
        </button>
      )}
    </div>
  )
}

import { useEffect } from 'react'
import type { LessonStep } from '../../../geometry/lesson/lesson.ts'
import type { Teaching } from '../teaching.ts'
import { show } from './showing.ts'

/** Shows the class the words of an open step, and what is said to the answer. @param fill writes the figures in */
export const useShowWords = (step: LessonStep, { stage, mark }: Teaching, fill: (text: string) => string): void => {
  const { ask } = step
  const verdict = ask && stage === 'told' && mark ? (mark.right ? ask.right : ask.wrong) : ''
  const words = {
    heading: fill(step.heading),
    text: step.text.map((each) => fill(each)),
    question: ask ? fill(ask.question) : '',
    choices: ask?.kind === 'choose' ? ask.choices.map((each) => fill(each.text)) : [],
    verdict: fill(verdict),
  }
  const key = JSON.stringify(words)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says which words changed
  useEffect(() => show(words), [key])
  useEffect(() => () => show({ heading: '', text: [], question: '', choices: [], verdict: '' }), [])
}

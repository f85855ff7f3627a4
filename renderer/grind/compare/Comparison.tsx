import { memo, useEffect } from 'react'
import { type Problem, problem } from '../../../geometry/result.ts'
import { type Running, useLiveGrind, useRunProblems } from '../useLiveGrind.ts'
import { type Choice, useComparing } from './comparing.ts'
import { keepTogether } from './together.ts'
import { useSubject } from './useSubject.ts'

/** The other grind, in a worker of its own, as long as there is something to compare with; it draws nothing. */
export const Comparison = memo(({ running }: { readonly running: Running }) => {
  const choice = useComparing((comparing) => comparing.choice)
  return choice === 'none' ? null : <OtherGrind key={choice} choice={choice} own={running} />
})

interface OtherGrindProps {
  readonly choice: Choice
  readonly own: Running
}

const OtherGrind = ({ choice, own }: OtherGrindProps) => {
  const subject = useSubject(choice, own.job)
  const { live, running } = useLiveGrind(subject?.ok ? subject.value.job : null)
  const ofRun = useRunProblems(live)
  const lost = ofRun[0]?.code === 'solverLost'
  const problems = lost ? LOST : subject?.ok === false ? subject.problems : ofRun
  const shown = subject?.ok && !lost ? running : null
  const fixedStep = subject?.ok ? subject.value.fixedStep : null
  useTellProblems(problems)
  useEffect(() => {
    if (!shown) return
    const together = keepTogether(own, shown, fixedStep)
    useComparing.setState({ other: { running: shown, together } })
    return () => {
      together.end()
      useComparing.setState({ other: null, turned: false })
    }
  }, [own, shown, fixedStep])
  return null
}

const LOST: readonly Problem[] = [problem('comparedLost')]

/** By what they say: a job that is checked anew gives the same problems in a new list. */
const useTellProblems = (problems: readonly Problem[]): void => {
  const text = JSON.stringify(problems)
  useEffect(() => useComparing.setState({ problems: JSON.parse(text) }), [text])
}

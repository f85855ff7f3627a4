import { useEffect, useState } from 'react'
import type { CallInput, CallName, CallOutput } from '../../main/contract/calls.ts'
import { sayProblem } from './store.ts'
import { call } from './transport.ts'

/**
 * Asks the host, and asks again when the question or one of `changes` is another.
 *
 * @param changes what the answer rests on: counts of changes, or records of the store
 * @returns the answer; undefined until there is one, or where it was refused, which is said
 */
export const useAnswer = <N extends CallName>(
  name: N,
  input: CallInput<N>,
  changes: readonly unknown[],
): CallOutput<N> | undefined => {
  const [answer, setAnswer] = useState<CallOutput<N>>()
  const asked = JSON.stringify(input)
  useEffect(() => {
    let wanted = true
    void call(name, JSON.parse(asked) as CallInput<N>).then((found) => {
      if (!wanted) return
      if (found.ok) setAnswer(found.value)
      else if (found.problems[0]) sayProblem(found.problems[0])
    })
    return () => {
      wanted = false
    }
  }, [name, asked, ...changes])
  return answer
}

import type { CallInput } from '../../main/contract/calls.ts'
import { handOverBlob } from '../app/handOver.ts'
import { say, sayProblem } from '../app/store.ts'
import { call } from '../app/transport.ts'

/** What is noted of those who learn; it stands outside the history, so its message carries no undo. */
type Noting = 'progress.forget' | 'authorisation.give' | 'authorisation.take' | 'setWork.set' | 'setWork.remove'

/** Notes something of somebody, and says so. @param name whose */
export const note = async <N extends Noting>(what: N, input: CallInput<N>, name: string): Promise<void> => {
  const done = await call(what, input)
  if (done.ok) say(`teach:noted.${what}`, { name })
  else if (done.problems[0]) sayProblem(done.problems[0])
}

/** Makes a file and hands it over. */
export const makeFile = async <N extends 'lesson.sheet' | 'lesson.file' | 'progress.table'>(
  what: N,
  input: CallInput<N>,
): Promise<void> => {
  const made = await call(what, input)
  if (!made.ok) {
    if (made.problems[0]) sayProblem(made.problems[0])
    return
  }
  handOverBlob(made.value as Parameters<typeof handOverBlob>[0], 'teach:made')
}

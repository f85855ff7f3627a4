import type { Findings } from '../../geometry/lesson/findings.ts'
import type { Change, Lesson } from '../../geometry/lesson/lesson.ts'
import { failed, problem, type Result } from '../../geometry/result.ts'
import { type SolverPort, spawnSolver } from '../worker/spawn.ts'

/** A step as it is looked at. */
export interface Looked {
  readonly lesson: Lesson
  readonly step: number
  readonly moved: Change
  readonly seed: number
}

interface Asking {
  readonly looked: Looked
  readonly answer: (result: Result<Findings> | null) => void
}

/** What the engine finds for lessons, away from the window's thread. */
export interface LessonEngine {
  /** @returns null where something newer was asked before this one's turn; `solverLost` where the worker failed, the next question gets a new one */
  ask(looked: Looked): Promise<Result<Findings> | null>
}

/** One question is at work, one waits: what was asked between is no longer looked at. @param spawn how a worker is made */
export const createLessonEngine = (spawn: () => SolverPort = spawnSolver): LessonEngine => {
  let port: SolverPort | null = null
  let atWork: Asking | null = null
  let waiting: Asking | null = null

  const begin = (asking: Asking): void => {
    port ??= open()
    atWork = asking
    port.postMessage({ type: 'teach', ...asking.looked })
  }
  const finish = (result: Result<Findings>): void => {
    atWork?.answer(result)
    atWork = null
    const next = waiting
    waiting = null
    if (next) begin(next)
  }
  const open = (): SolverPort => {
    const fresh = spawn()
    fresh.onmessage = ({ data }) => {
      if (data.type === 'taught') finish(data.result)
    }
    fresh.onerror = () => {
      fresh.terminate()
      port = null
      finish(failed(problem('solverLost')))
    }
    return fresh
  }
  return {
    ask: (looked) =>
      new Promise((answer) => {
        if (!atWork) return begin({ looked, answer })
        waiting?.answer(null)
        waiting = { looked, answer }
      }),
  }
}

/** The window's one, begun with the first lesson. */
export const lessonEngine = createLessonEngine()

import type { Job } from '../../geometry/job.ts'
import type { Report } from '../../geometry/report.ts'
import { failed, problem, type Result } from '../../geometry/result.ts'
import type { PlanAnswer } from '../../geometry/solveJob.ts'
import { type SolverPort, spawnSolver } from './spawn.ts'

/** Solves whole jobs away from the window's thread. */
export interface Solver {
  /**
   * @returns the report, or the problems of the job; `superseded` where a newer job came before this one was done, and
   * `solverLost` where the worker itself failed
   * @param onAnswer told Plan's answer as soon as it is there, well before the report
   */
  solve(job: Job, onAnswer?: (answer: PlanAnswer) => void): Promise<Result<Report>>
}

interface Waiting {
  readonly id: number
  readonly answer: (result: Result<Report>) => void
  readonly onAnswer: ((answer: PlanAnswer) => void) | undefined
}

/**
 * A solve cannot be interrupted, so a newer job ends the worker of an older one and starts afresh.
 * @param spawn how a worker is made
 */
export const createSolver = (spawn: () => SolverPort): Solver => {
  let port: SolverPort | null = null
  let waiting: Waiting | null = null
  let lastId = 0

  const finish = (result: Result<Report>): void => {
    const done = waiting
    waiting = null
    done?.answer(result)
  }
  const drop = (code: string): void => {
    port?.terminate()
    port = null
    finish(failed(problem(code)))
  }
  const open = (): SolverPort => {
    const fresh = spawn()
    fresh.onmessage = ({ data }) => {
      if (data.type === 'answered' && data.id === waiting?.id) waiting.onAnswer?.(data.answer)
      if (data.type === 'solved' && data.id === waiting?.id) finish(data.result)
    }
    fresh.onerror = () => drop('solverLost')
    return fresh
  }
  return {
    solve: (job, onAnswer) =>
      new Promise((answer) => {
        if (waiting) drop('superseded')
        port ??= open()
        waiting = { id: ++lastId, answer, onAnswer }
        port.postMessage({ type: 'solve', id: lastId, job })
      }),
  }
}

/** The window's solver. */
export const solver: Solver = createSolver(spawnSolver)

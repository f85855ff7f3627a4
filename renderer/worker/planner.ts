import type { AimCurve } from '../../geometry/aimCurve.ts'
import type { Job } from '../../geometry/job.ts'
import { failed, problem, type Result } from '../../geometry/result.ts'
import type { Schedule } from '../../geometry/schedule.ts'
import { type SolverPort, spawnSolver } from './spawn.ts'

/** A search for a schedule under way. */
export interface Planning {
  readonly result: Promise<Result<Schedule>>
  /** Ends it; its result is then the problem `cancelled`. */
  cancel(): void
}

/** Looks for a schedule in a worker of its own, so that nothing else waits for it. @param onProgress told a growing share, 0 to 1 */
export const planScheduleAside = (
  job: Job,
  curve: AimCurve,
  onProgress: (share: number) => void,
  spawn: () => SolverPort = spawnSolver,
): Planning => {
  const port = spawn()
  let settle: (result: Result<Schedule>) => void = () => undefined
  const result = new Promise<Result<Schedule>>((answer) => {
    settle = (value) => {
      port.terminate()
      answer(value)
    }
  })
  port.onmessage = ({ data }) => {
    if (data.type === 'scheduling') onProgress(data.share)
    if (data.type === 'scheduled') settle(data.result)
  }
  port.onerror = () => settle(failed(problem('solverLost')))
  port.postMessage({ type: 'schedule', job, curve })
  return { result, cancel: () => settle(failed(problem('cancelled'))) }
}

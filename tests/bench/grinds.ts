import { formEdge } from '../../geometry/formed.ts'
import { type Freedom, freedomOf } from '../../geometry/freedom.ts'
import { advance, startGrind } from '../../geometry/grind.ts'
import type { Job } from '../../geometry/job.ts'
import { planMotion } from '../../geometry/motion.ts'
import { planSchedule } from '../../geometry/schedule.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { answerJob, solveJob } from '../../geometry/solveJob.ts'
import { stopsForAim } from '../../geometry/turns.ts'
import { exampleJob, found } from '../geometry/example.ts'
import { grindOracle, startOracle } from '../support/oracle.ts'
import { about, bestMs, inMs, medianMs, type Row } from './clock.ts'

const FINE = { across: 115, through: 17 }
const job = exampleJob({ grid: FINE })
const freedomFor = (of: Job): Freedom => found(freedomOf(of, found(setUpOf(of))))
const freedom = freedomFor(job)

const STEPS = job.motion.sweeps * job.motion.stepsPerSweep
/** The oracle is so slow that it does only the first steps; its time is scaled to all of them. */
const ORACLE_STEPS = 24

const grindMs = (of: Job, steps: number, runs: number): number =>
  bestMs(runs, () => void found(advance(found(startGrind(of)), planMotion(of, freedomFor(of)), steps)))

const grindRows = (): readonly Row[] => {
  const engineMs = grindMs(job, STEPS, 10)
  const oracleMs = (bestMs(1, () => grindOracle(job, startOracle(job), ORACLE_STEPS)) * STEPS) / ORACLE_STEPS
  const small = exampleJob({ grid: { across: 58, through: 9 } })
  const perNodes = engineMs / grindMs(small, STEPS, 10)
  const perSteps = engineMs / grindMs(job, STEPS / 4, 10)
  const nodes = (FINE.across * FINE.through) / (small.grid.across * small.grid.through)
  return [
    {
      what: `grind of ${STEPS} steps on ${FINE.across} x ${FINE.through} points`,
      took: inMs(engineMs),
      against: `${about(oracleMs / engineMs)} times quicker than the plain oracle (${ORACLE_STEPS} of its steps, scaled)`,
    },
    { what: 'points', took: `x ${about(nodes)}`, against: `time x ${about(perNodes)}` },
    { what: 'steps', took: 'x 4', against: `time x ${about(perSteps)}` },
  ]
}

const arc = { kind: 'arc', reliefMm: 0.5 } as const
const schedule = () =>
  found(
    planSchedule(
      job,
      arc,
      { mostSettings: 2 },
      () => {},
      () => false,
    ),
  )

const answerRows = (): readonly Row[] => [
  {
    what: 'formed edge after the free play was changed',
    took: inMs(bestMs(20, () => void formEdge(job, freedom, freedom.settings[0]))),
    against: 'a picture of 60 a second: 16 ms',
  },
  {
    what: 'stops and sweeps for a wanted relief',
    took: inMs(bestMs(10, () => void stopsForAim(job, freedom, 0.5))),
    against: '',
  },
  {
    what: 'answer of Plan after a change, median of 21',
    took: inMs(medianMs(21, () => void found(answerJob(job)))),
    against: '50 ms',
  },
  { what: 'schedule of two settings', took: inMs(bestMs(2, () => void schedule())), against: '' },
  { what: 'whole report', took: inMs(bestMs(5, () => void found(solveJob(job)))), against: '' },
]

/** Everything that grinds. */
export const engineRows = (): readonly Row[] => [...grindRows(), ...answerRows()]

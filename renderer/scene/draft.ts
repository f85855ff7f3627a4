import type { Object3D } from 'three'
import type { Job } from '../../geometry/job.ts'
import type { SetUp } from '../../geometry/setUp.ts'
import { barAxisMm, type MachineFigures } from './placement.ts'

/** A set-up that somebody is trying out by hand, not yet the run's. */
export interface SetUpDraft {
  readonly job: Job
  readonly setUp: SetUp
}

interface MovedParts {
  readonly bar: Object3D
  /** Parts of the fixture, each in its own frame. */
  readonly fixture: readonly Object3D[]
}

/** Moves what was built for one set-up to where another has it: the bar, and the fixture along the blade. Nothing is built anew. */
export const moveParts = ({ bar, fixture }: MovedParts, built: MachineFigures, drawn: MachineFigures): void => {
  const [[fromY, fromZ], [toY, toZ]] = [barAxisMm(built), barAxisMm(drawn)]
  bar.position.set(0, toY - fromY, toZ - fromZ)
  for (const part of fixture) part.position.y = drawn.projectionMm - built.projectionMm
}

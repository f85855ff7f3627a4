import { barHandle } from './barHandle.ts'
import { barOffsetHandle } from './barOffsetHandle.ts'
import type { HandleFacts, HandleKind } from './kind.ts'
import { projectionHandle } from './projectionHandle.ts'
import { reachHandle } from './reachHandle.ts'
import { stopHandle } from './stopHandle.ts'

/** What of this machine can be set by hand, in the order in which the keyboard goes through it. */
export const kindsOf = (facts: HandleFacts, lifted: boolean): HandleKind[] => {
  const { fixture, station } = facts.job
  const steered = fixture.kind === 'steered' && fixture.guideArmMm !== null
  return [
    ...(lifted ? [] : [reachHandle(facts)]),
    ...(steered ? [stopHandle('left', facts), stopHandle('right', facts)] : []),
    barHandle(facts),
    ...(station.barOffsetMm > 0 ? [barOffsetHandle(facts)] : []),
    projectionHandle(facts),
  ]
}

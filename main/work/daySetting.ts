import { freePlayOf } from '../../geometry/freedom.ts'
import type { Job } from '../../geometry/job.ts'
import { ok, type Result } from '../../geometry/result.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { measureOf } from '../contract/barMeasure.ts'
import type { DaySetting } from '../contract/day.ts'
import type { Tool } from '../contract/entities.ts'
import { inStep, newDocument } from '../job/document.ts'
import type { KeptJob } from '../job/job.ts'
import { chooseServing, type Serving } from '../job/parts.ts'

const named = ({ id, code, name }: DaySetting['station']): DaySetting['station'] => ({ id, code, name })

const turnsOf = ({ fixture, motion }: Job): DaySetting['turns'] =>
  fixture.screwPitchMm === null || motion.yawLeftDeg !== null || motion.yawRightDeg !== null
    ? null
    : { left: motion.stopTurnsLeft, right: motion.stopTurnsRight }

/** What a fixture has learnt moves neither bar nor stops, so it is not asked here. */
const calibration = null

/**
 * How bar and stops are set for a tool: from its job in hand as it would be ground today, else from tool, station and fixture
 * as a first job would take them. Nothing is written.
 *
 * @returns or why it cannot be set up
 */
export const daySetting = (tool: Tool, job: KeptJob | null, serving: Serving): Result<DaySetting> => {
  const chosen = chooseServing(serving, tool, job ?? {})
  if (!chosen.ok) return chosen
  const { station, fixture } = chosen.value
  const parts = { tool, station, fixture, calibration }
  const document = job === null ? newDocument(parts) : inStep(job.document, parts, job.toolAim)
  const setUp = setUpOf(document)
  if (!setUp.ok) return setUp
  const { barDistanceMm, projectionMm } = setUp.value
  return ok({
    station: named(station),
    fixture: named(fixture),
    barDistanceMm,
    barMm: measureOf(station.barMeasure, station, barDistanceMm),
    barMeasure: station.barMeasure,
    projectionMm,
    freePlay: freePlayOf(document),
    turns: turnsOf(document),
    settings: 1 + document.motion.schedule.length,
    from: job === null ? 'tool' : 'job',
  })
}

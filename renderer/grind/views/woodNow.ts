import { edgeRow } from '../../../geometry/edge.ts'
import { behindAt, profileOf } from '../../../geometry/profile.ts'
import type { Report } from '../../../geometry/report.ts'
import type { Tool } from '../../../main/contract/entities.ts'
import { type Seen, seenBy } from '../../wood/seen.ts'
import type { WoodSetting } from '../../wood/setting.ts'
import type { Frame, RunShape } from '../../worker/protocol.ts'

/** What the edge of a moment is set into: an iron in its plane. */
export interface InPlane {
  readonly tool: Tool
  readonly report: Report
  readonly setting: WoodSetting
}

/** @returns what the wood meets of the edge as it is at a moment; null for a tool without a seat */
export const seenNow = (
  frame: Pick<Frame, 'vMm'>,
  { uMm, throughCount }: Pick<RunShape, 'uMm' | 'throughCount'>,
  { tool, report, setting }: InPlane,
): Seen | null => {
  const profile = profileOf(Array.from(uMm), Array.from(edgeRow(frame.vMm, throughCount)))
  return seenBy(profile, tool, report, setting)
}

/** How the places of the blade, back up at the wheel, lie in its plane: a bevel-up iron is turned over, a skewed one narrower. */
export const inPlaneMm = ({ tool, setting }: InPlane, uMm: number): number =>
  (tool.bevelSide === 'up' ? -uMm : uMm) * Math.cos((setting.skewDeg * Math.PI) / 180)

/** The way back. */
export const onBladeMm = (inPlane: InPlane, planeMm: number): number => planeMm / inPlaneMm(inPlane, 1)

/** @returns thickness of the shaving at a place of the plane; 0 where the edge stands clear of the wood */
export const thicknessAt = ({ profile, depthMm, seatSine }: Seen, planeMm: number): number =>
  Math.max(0, depthMm - behindAt(profile, planeMm) * seatSine)

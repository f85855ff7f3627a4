import { edgeRow, foremostMm } from '../../../geometry/edge.ts'
import { behindAt, profileOf } from '../../../geometry/profile.ts'
import type { Report } from '../../../geometry/report.ts'
import { fillBoard } from '../../../geometry/shaving.ts'
import { cos, tan } from '../../../geometry/trigonometry.ts'
import { radFromDeg } from '../../../geometry/units.ts'
import type { Tool } from '../../../main/contract/entities.ts'
import { boardPlaces, passesBefore, type SectionLayout } from '../../wood/sectionLayout.ts'
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

/** The edge of a moment as the wood meets it, and the board before and after it: filled anew with every frame. */
export interface WoodSurface {
  /** Across the plane, rising (mm), and how far each place lies behind the foremost. */
  readonly uMm: Float64Array
  readonly behindMm: Float64Array
  /** Places across the board, and how far it lies below its surface there, before this pass and after it. */
  readonly placesMm: Float64Array
  readonly beforeMm: Float64Array
  readonly afterMm: Float64Array
  fill(vMm: Float64Array): void
}

/** What of a layout the surface hangs on. */
type Laid = Pick<SectionLayout, 'across' | 'middlePx'>

/** @returns the same surface as `seenNow` and `sectionLayout` give, for drawing it with every frame */
export const woodSurface = (
  { uMm, throughCount, acrossCount }: Pick<RunShape, 'uMm' | 'throughCount' | 'acrossCount'>,
  inPlane: InPlane,
  { depthMm, seatSine }: Pick<Seen, 'depthMm' | 'seatSine'>,
  { across, middlePx }: Laid,
  roomPx: number,
): WoodSurface => {
  const { leverDeg, skewDeg, stepMm } = inPlane.setting
  const turnedOver = inPlane.tool.bevelSide === 'up'
  const last = acrossCount - 1
  const onBlade = (i: number): number => (turnedOver ? last - i : i)
  const flatMm = Float64Array.from(uMm, (_, i) => (turnedOver ? -1 : 1) * (uMm[onBlade(i)] as number))
  const slope = tan(radFromDeg(leverDeg))
  const narrower = cos(radFromDeg(skewDeg))
  const edge = { uMm: flatMm.map((u) => u * narrower), behindMm: new Float64Array(acrossCount) }
  const placesMm = boardPlaces(roomPx, middlePx, across)
  const [beforeMm, afterMm] = [new Float64Array(placesMm.length), new Float64Array(placesMm.length)]
  const earlier = passesBefore(stepMm)
  const all = [0, ...earlier]
  return {
    ...edge,
    placesMm,
    beforeMm,
    afterMm,
    fill: (vMm) => {
      const { behindMm } = edge
      for (let i = 0; i <= last; i++)
        behindMm[i] = (vMm[onBlade(i) * throughCount] as number) + (flatMm[i] as number) * slope
      const foremost = foremostMm(behindMm)
      for (let i = 0; i <= last; i++) behindMm[i] = (behindMm[i] as number) - foremost
      fillBoard(beforeMm, edge, earlier, depthMm, seatSine, placesMm)
      fillBoard(afterMm, edge, all, depthMm, seatSine, placesMm)
    },
  }
}

/** How the places of the blade, back up at the wheel, lie in its plane: a bevel-up iron is turned over, a skewed one narrower. */
export const inPlaneMm = ({ tool, setting }: InPlane, uMm: number): number =>
  (tool.bevelSide === 'up' ? -uMm : uMm) * Math.cos((setting.skewDeg * Math.PI) / 180)

/** The way back. */
export const onBladeMm = (inPlane: InPlane, planeMm: number): number => planeMm / inPlaneMm(inPlane, 1)

/** @returns thickness of the shaving at a place of the plane; 0 where the edge stands clear of the wood */
export const thicknessAt = ({ profile, depthMm, seatSine }: Seen, planeMm: number): number =>
  Math.max(0, depthMm - behindAt(profile, planeMm) * seatSine)

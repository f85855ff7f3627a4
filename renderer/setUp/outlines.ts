import type { Job } from '../../geometry/job.ts'
import type { SetUp } from '../../geometry/setUp.ts'
import type { Layout } from './layout.ts'
import type { Point, Triangle } from './triangle.ts'

/** Drawn blade beyond the bar (mm): enough to see how the fixture holds it. */
export const BEYOND_BAR_MM = 44
/** Half the length of the fixture's plate along the blade, and its thickness (mm): a plain schematic part. */
const PLATE_MM = 22
const PLATE_THICK_MM = 5
/** The drawn wheel goes on below its axle (px). */
const BELOW_AXLE_PX = 28

/** @returns an SVG path through places of a drawing */
export const pathOf = ({ px }: Pick<Layout, 'px'>, points: readonly Point[]): string =>
  `M${points
    .map((point) =>
      px(point)
        .map((value) => value.toFixed(1))
        .join(' '),
    )
    .join('L')}`

/** @returns the wheel's upper half, as an SVG path */
export const wheelPath = ({ px, radiusPx: r }: Layout): string => {
  const [x, y] = px([0, 0])
  return `M${x - r} ${y}A${r} ${r} 0 0 1 ${x + r} ${y}v${BELOW_AXLE_PX}h${-2 * r}Z`
}

/** @param bevel places from the edge to the heel @returns the blade in section, up to `endMm` from where its edge was */
export const bladeOutline = (
  { onBlade }: Triangle,
  bevel: readonly Point[],
  endMm: number,
  thicknessMm: number,
): readonly Point[] => [onBlade(endMm, 0), ...bevel, onBlade(endMm, thicknessMm)]

/** Holds the blade to the bar by the face that lies on it. @returns block and plate */
export const fixtureOutlines = (
  { onBlade }: Pick<Triangle, 'onBlade'>,
  setUp: SetUp,
  job: Job,
): readonly (readonly Point[])[] => {
  const { projectionMm: P, seatOffsetMm, barRadiusMm } = setUp
  const onBevelSide = job.fixture.seatsOn === 'bevelSide'
  const seat = onBevelSide ? job.blade.thicknessMm : 0
  const plateN = seat + (onBevelSide ? PLATE_THICK_MM : -PLATE_THICK_MM)
  const part = (halfMm: number, toN: number): readonly Point[] => [
    onBlade(P - halfMm, seat),
    onBlade(P + halfMm, seat),
    onBlade(P + halfMm, toN),
    onBlade(P - halfMm, toN),
  ]
  return [part(barRadiusMm + 2, seatOffsetMm), part(PLATE_MM, plateN)]
}

/** @returns the bevel at the very tip, between the back and the wheel's tangent, both carried on below the edge */
export const tipAngle = (
  { px }: Pick<Layout, 'px'>,
  { edge, onBlade }: Triangle,
  bevelRad: number,
  arcPx: number,
): { readonly sides: string; readonly arc: string } => {
  const [x, y] = px(edge)
  const [fromX, fromY] = px(onBlade(0, 0))
  const [backX, backY] = px(onBlade(-1, 0))
  const back = Math.atan2(backY - fromY, backX - fromX)
  const at = (angle: number, farPx: number) =>
    `${(x + farPx * Math.cos(angle)).toFixed(1)} ${(y + farPx * Math.sin(angle)).toFixed(1)}`
  const long = arcPx + 26
  return {
    sides: `M${x} ${y}L${at(back, long)}M${x} ${y}L${at(back - bevelRad, long)}`,
    arc: `M${at(back, arcPx)}A${arcPx} ${arcPx} 0 0 0 ${at(back - bevelRad, arcPx)}`,
  }
}

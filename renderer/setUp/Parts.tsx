import type { Layout } from './layout.ts'
import type { Standing } from './SetUpScreen.tsx'
import { BEYOND_BAR_MM } from './TriangleDrawing.tsx'
import type { Point, Triangle } from './triangle.ts'

/** What every part of the drawing needs. */
export interface DrawingProps {
  readonly standing: Standing
  readonly triangle: Triangle
  readonly layout: Layout
}

/** @returns an SVG path through places of the drawing */
export const pathOf = ({ px }: Layout, points: readonly Point[]): string =>
  `M${points
    .map((point) =>
      px(point)
        .map((value) => value.toFixed(1))
        .join(' '),
    )
    .join('L')}`

/** Points along the hollow: smooth at any scale. */
const HOLLOW_POINTS = 12
/** Half the length of the fixture's plate along the blade, and its thickness (mm): a plain schematic part. */
const PLATE_MM = 22
const PLATE_THICK_MM = 5

/** The things themselves: wheel, bar, fixture, blade in section. */
export const Parts = (props: DrawingProps) => {
  const { standing, triangle, layout } = props
  const { setUp } = standing
  const [x, y] = layout.px([0, 0])
  const [barX, barY] = layout.px(triangle.bar)
  const each = layout.radiusPx / setUp.wheelRadiusMm
  return (
    <>
      <path
        className="wheel"
        d={`M${x - layout.radiusPx} ${y}A${layout.radiusPx} ${layout.radiusPx} 0 0 1 ${x + layout.radiusPx} ${y}v28h${-2 * layout.radiusPx}Z`}
      />
      <Fixture {...props} />
      <Blade {...props} />
      <circle className="bar" cx={barX} cy={barY} r={setUp.barRadiusMm * each} />
    </>
  )
}

const Blade = ({ standing, triangle, layout }: DrawingProps) => {
  const { setUp, job, hollow } = standing
  const { thicknessMm } = job.blade
  const end = setUp.projectionMm + BEYOND_BAR_MM
  const [centreV, centreN] = [
    -setUp.wheelRadiusMm * Math.sin(setUp.bevelRad),
    setUp.wheelRadiusMm * Math.cos(setUp.bevelRad),
  ]
  const rim = Array.from({ length: HOLLOW_POINTS + 1 }, (_, k) => {
    const n = (thicknessMm * k) / HOLLOW_POINTS
    const across = n - centreN
    return triangle.onBlade(centreV + Math.sqrt(setUp.wheelRadiusMm ** 2 - across * across), n)
  })
  const body = [triangle.onBlade(end, 0), ...rim, triangle.onBlade(end, thicknessMm)]
  return <path className="blade" data-chord={hollow.chordMm} d={`${pathOf(layout, body)}Z`} />
}

/** Holds the blade to the bar by the face that lies on it. */
const Fixture = ({ standing, triangle, layout }: DrawingProps) => {
  const { setUp, job } = standing
  const { projectionMm: P, seatOffsetMm: o, barRadiusMm } = setUp
  const onBevelSide = job.fixture.seatsOn === 'bevelSide'
  const seat = onBevelSide ? job.blade.thicknessMm : 0
  const sign = onBevelSide ? 1 : -1
  const plate = [
    triangle.onBlade(P - PLATE_MM, seat),
    triangle.onBlade(P + PLATE_MM, seat),
    triangle.onBlade(P + PLATE_MM, seat + sign * PLATE_THICK_MM),
    triangle.onBlade(P - PLATE_MM, seat + sign * PLATE_THICK_MM),
  ]
  const foot = barRadiusMm + 2
  const block = [
    triangle.onBlade(P - foot, seat),
    triangle.onBlade(P + foot, seat),
    triangle.onBlade(P + foot, o),
    triangle.onBlade(P - foot, o),
  ]
  return (
    <>
      <path className="fixture-part" d={`${pathOf(layout, block)}Z`} />
      <path className="fixture-part" d={`${pathOf(layout, plate)}Z`} />
    </>
  )
}

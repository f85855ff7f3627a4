import type { Layout } from './layout.ts'
import { BEYOND_BAR_MM, bladeOutline, fixtureOutlines, pathOf, wheelPath } from './outlines.ts'
import type { Standing } from './SetUpScreen.tsx'
import type { Triangle } from './triangle.ts'

/** What every part of the drawing needs. */
export interface DrawingProps {
  readonly standing: Standing
  readonly triangle: Triangle
  readonly layout: Layout
}

/** Points along the hollow: smooth at any scale. */
const HOLLOW_POINTS = 12
/** The things themselves: wheel, bar, fixture, blade in section. */
export const Parts = (props: DrawingProps) => {
  const { standing, triangle, layout } = props
  const { setUp } = standing
  const [barX, barY] = layout.px(triangle.bar)
  const each = layout.radiusPx / setUp.wheelRadiusMm
  return (
    <>
      <path className="wheel" d={wheelPath(layout)} />
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
  const body = bladeOutline(triangle, rim, end, thicknessMm)
  return <path className="blade" data-chord={hollow.chordMm} d={`${pathOf(layout, body)}Z`} />
}

/** Holds the blade to the bar by the face that lies on it. */
const Fixture = ({ standing: { setUp, job }, triangle, layout }: DrawingProps) => {
  const [block, plate] = fixtureOutlines(triangle, setUp, job).map((outline) => `${pathOf(layout, outline)}Z`)
  return (
    <>
      <path className="fixture-part" d={block} />
      <path className="fixture-part" d={plate} />
    </>
  )
}

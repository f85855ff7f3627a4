import type { SetUp } from '../../geometry/setUp.ts'
import type { BarMeasure } from '../../main/contract/barMeasure.ts'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { pathOf, tipAngle } from './outlines.ts'
import type { DrawingProps } from './Parts.tsx'
import type { Point, Triangle } from './triangle.ts'

/** How far dimensions stand off their part (mm of the drawing's paper, as px). */
export const OFF_PX = 64
const TICK_PX = 7
const RING_PX = 3.5

/** The triangle, its dimensions and axes. */
export const Measures = (props: DrawingProps) => {
  const { standing, triangle, layout } = props
  const { setUp } = standing
  const measure = useApp((app) => app.station?.barMeasure ?? 'gap')
  const [from, to] = barEnds(setUp, triangle, measure)
  const [edgeX, edgeY] = layout.px(triangle.edge)
  const [x, y] = layout.px([0, 0])
  return (
    <g className="measures">
      <path className="triangle-area" d={`${pathOf(layout, [[0, 0], triangle.bar, triangle.edge])}Z`} />
      <path className="triangle-line" d={`${pathOf(layout, [[0, 0], triangle.bar, triangle.edge])}Z`} />
      <path className="dimension" d={`M${x - layout.radiusPx} ${y}H${x + layout.radiusPx}`} />
      <Dimension
        {...props}
        from={triangle.onBlade(0, 0)}
        to={triangle.onBlade(setUp.projectionMm, 0)}
        offPx={-OFF_PX}
      />
      <Dimension {...props} from={from} to={to} offPx={OFF_PX + 16} />
      <BevelAngle {...props} />
      <AlongLines {...props} />
      <circle className="joint" cx={edgeX} cy={edgeY} r="4.5" />
      <Ring at={layout.px([0, 0])} />
      <Ring at={layout.px(triangle.bar)} />
    </g>
  )
}

/** Where the caliper goes for the bar: its two ends. */
export const barEnds = (setUp: SetUp, triangle: Triangle, measure: BarMeasure): readonly [Point, Point] => {
  const { wheelRadiusMm, barDistanceMm, barRadiusMm } = setUp
  if (measure === 'gap') return [triangle.towardsBar(wheelRadiusMm), triangle.towardsBar(barDistanceMm - barRadiusMm)]
  const [x, y] = triangle.bar
  return [
    [x, wheelRadiusMm],
    [x, y + (measure === 'heightToTop' ? barRadiusMm : -barRadiusMm)],
  ]
}

const Ring = ({ at: [x, y] }: { readonly at: readonly [number, number] }) => (
  <circle className="ring" cx={x} cy={y} r={RING_PX} />
)

interface DimensionProps extends DrawingProps {
  readonly from: Point
  readonly to: Point
  /** To the left of the way from `from` to `to`. */
  readonly offPx: number
}

/** @returns ends of a dimension line beside its part (px) */
export const besidePx = (
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
  offPx: number,
): readonly (readonly [number, number])[] => {
  const length = Math.hypot(bx - ax, by - ay) || 1
  const [nx, ny] = [(by - ay) / length, -(bx - ax) / length]
  return [
    [ax + nx * offPx, ay + ny * offPx],
    [bx + nx * offPx, by + ny * offPx],
  ]
}

/** A dimension beside its part: extension lines, a line with plain ticks. */
const Dimension = ({ layout, from, to, offPx }: DimensionProps) => {
  const [a, b] = [layout.px(from), layout.px(to)]
  const ends = besidePx(a, b, offPx)
  const ticks = ends.map(([x, y], k) => {
    const [fromX, fromY] = k === 0 ? a : b
    const length = Math.hypot(x - fromX, y - fromY) || 1
    const [tx, ty] = [((x - fromX) / length) * TICK_PX, ((y - fromY) / length) * TICK_PX]
    return `M${x - tx} ${y - ty}L${x + tx} ${y + ty}`
  })
  return (
    <>
      <path className="leader" d={ends.map(([x, y], k) => `M${(k === 0 ? a : b).join(' ')}L${x} ${y}`).join('')} />
      <path className="dimension" d={`M${ends.map((end) => end.join(' ')).join('L')}${ticks.join('')}`} />
    </>
  )
}

/** Where the bevel's arc stands from the edge (px). */
export const ARC_PX = 84

const BevelAngle = ({ standing, triangle, layout }: DrawingProps) => {
  const { sides, arc } = tipAngle(layout, triangle, standing.setUp.bevelRad, ARC_PX)
  return (
    <>
      <path className="axis" d={sides} />
      <path className="dimension" d={arc} />
    </>
  )
}

/** Base lines of what is written above and below a side of the triangle (px). */
const ABOVE_PX = -7
const BELOW_PX = 17

/** Figures written along the triangle's sides, both inside it: the wheel's own figure stands to the left. */
const AlongLines = ({ standing, triangle, layout }: DrawingProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { setUp } = standing
  return (
    <>
      <Along
        a={layout.px([0, 0])}
        b={layout.px(triangle.bar)}
        offPx={BELOW_PX}
        words={t('setUp:along.axes', { length: inWords(setUp.barDistanceMm, 'mm', 1) })}
      />
      <Along
        a={layout.px([0, 0])}
        b={layout.px(triangle.edge)}
        offPx={ABOVE_PX}
        words={t('setUp:along.radius', { length: inWords(setUp.wheelRadiusMm, 'mm', 1) })}
      />
    </>
  )
}

interface AlongProps {
  readonly a: readonly [number, number]
  readonly b: readonly [number, number]
  /** Its base line from the side, down across the way from `a` to `b`. */
  readonly offPx: number
  readonly words: string
}

const Along = ({ a: [ax, ay], b: [bx, by], offPx, words }: AlongProps) => {
  const turnDeg = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI
  return (
    <text
      className="along"
      transform={`translate(${(ax + bx) / 2} ${(ay + by) / 2}) rotate(${turnDeg.toFixed(1)})`}
      y={offPx}
      textAnchor="middle"
    >
      {words}
    </text>
  )
}

import type { CSSProperties, ReactNode } from 'react'
import { useApp } from '../app/store.ts'
import { BarFigure, BevelFigure, ProjectionFigure, WheelFigure } from './figures.tsx'
import { ARC_PX, barEnds, besidePx, OFF_PX } from './Measures.tsx'
import type { DrawingProps } from './Parts.tsx'

interface FiguresBesideProps extends DrawingProps {
  readonly widthPx: number
}

type PlacePx = readonly [number, number]

/** Least height between two figures of one column (px): a figure with its two lines of notes. */
const APART_PX = 150
/** Half the height of a large figure: its leader meets it there (px). */
const HALF_PX = 24
/** Between a dimension and its figure (px). */
const LEADER_PX = 40
/** Half the height of the solid block (px). */
const BLOCK_HALF_PX = 40
const BAR_WIDTH_PX = 256
/** The bar's figure stays below the words at the upper left (px). */
const GIVEN_PX = 212
/** Its words are kept off the wheel by standing this far above the middle of the gap (px). */
const BAR_ABOVE_PX = 92

/** The figures of the triangle: beside their parts with leaders, or in rows where the window is narrow. */
export const FiguresBeside = ({ standing, triangle, layout, widthPx }: FiguresBesideProps) => {
  const { setUp } = standing
  const middle = (ends: readonly (readonly [number, number])[]): readonly [number, number] => [
    ((ends[0]?.[0] ?? 0) + (ends[1]?.[0] ?? 0)) / 2,
    ((ends[0]?.[1] ?? 0) + (ends[1]?.[1] ?? 0)) / 2,
  ]
  const along = [layout.px(triangle.onBlade(0, 0)), layout.px(triangle.onBlade(setUp.projectionMm, 0))] as const
  const measure = useApp((app) => app.station?.barMeasure ?? 'gap')
  const gap = barEnds(setUp, triangle, measure).map(layout.px) as [PlacePx, PlacePx]
  const projectionAt = middle(besidePx(along[0], along[1], -OFF_PX))
  const gapAt = middle(besidePx(gap[0], gap[1], OFF_PX + 16))
  const [edgeX, edgeY] = layout.px(triangle.edge)
  const [axleX, axleY] = layout.px([0, 0])
  const rightPx = Math.max(axleX + layout.radiusPx, projectionAt[0], edgeX + ARC_PX) + LEADER_PX
  const projectionY = Math.max(16, projectionAt[1] - HALF_PX)
  const bevelY = Math.max(edgeY + 40, projectionY + APART_PX)
  const barTop = Math.max(GIVEN_PX, gapAt[1] - BAR_ABOVE_PX)
  const leaders = [
    `M${gapAt[0]} ${gapAt[1]}L${gapAt[0] - LEADER_PX + 8} ${barTop + BLOCK_HALF_PX}h-8`,
    `M${projectionAt[0]} ${projectionAt[1]}H${rightPx - 8}`,
    `M${edgeX + ARC_PX * 0.75} ${edgeY + ARC_PX * 0.64}L${rightPx - 24} ${bevelY + HALF_PX}h16`,
  ]
  const { wide } = layout
  const barAt = { left: gapAt[0] - LEADER_PX - BAR_WIDTH_PX, top: barTop, width: BAR_WIDTH_PX }
  const wheelLeft = Math.max(axleX - layout.radiusPx * 0.82, 8)
  const wheelAt = { left: wheelLeft, top: axleY - 116, maxWidth: Math.max(150, axleX - wheelLeft - 24) }
  return (
    <>
      {wide && (
        <svg className="triangle-leaders" aria-hidden="true">
          <path className="leader" d={leaders.join('')} />
          <circle className="ring" cx={gapAt[0]} cy={gapAt[1]} r="3.5" />
          <circle className="ring" cx={projectionAt[0]} cy={projectionAt[1]} r="3.5" />
        </svg>
      )}
      <div className="triangle-figures">
        <Beside wide={wide} at={barAt} side="left">
          <BarFigure standing={standing} />
        </Beside>
        <Beside wide={wide} at={{ left: rightPx, top: projectionY, maxWidth: widthPx - rightPx }}>
          <ProjectionFigure standing={standing} />
        </Beside>
        <Beside wide={wide} at={{ left: rightPx, top: bevelY, maxWidth: widthPx - rightPx }}>
          <BevelFigure standing={standing} />
        </Beside>
        <Beside wide={wide} at={wheelAt}>
          <WheelFigure />
        </Beside>
      </div>
    </>
  )
}

interface BesideProps {
  readonly wide: boolean
  readonly at: CSSProperties
  readonly side?: 'left'
  readonly children: ReactNode
}

const Beside = ({ wide, at, side, children }: BesideProps) => (
  <div className="beside" data-side={side} style={wide ? at : undefined}>
    {children}
  </div>
)

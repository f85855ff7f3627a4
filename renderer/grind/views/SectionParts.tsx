import { useId, useMemo, useRef } from 'react'
import { bevelAngles } from '../../../geometry/protractor.ts'
import type { SteelLine } from '../../../geometry/straightedge.ts'
import { machineFigures } from '../../scene/placement.ts'
import { BEYOND_BAR_MM, bladeOutline, fixtureOutlines, pathOf, tipAngle, wheelPath } from '../../setUp/outlines.ts'
import type { Point, Triangle } from '../../setUp/triangle.ts'
import { useTexts } from '../../ui/texts.tsx'
import { sectionAt } from '../tools/steel.ts'
import { type Running, useEachFrame } from '../useLiveGrind.ts'
import { bevelPoints, liveTriangle } from './liveTriangle.ts'
import { nearestColumn } from './place.ts'
import type { SectionPlan } from './sectionLayout.ts'

/** The angle's arc at the edge magnified (px). */
const NEAR_ARC_PX = 44

/** What of a section is drawn by hand, by its class. */
type Part = 'wheel' | 'block' | 'plate' | 'blade' | 'sides' | 'angle' | 'arc' | 'chord'

/** The layout, with the triangle before the first step that it was made for. */
export interface Plan extends SectionPlan {
  readonly still: Triangle
}

interface DrawnProps {
  readonly running: Running
  readonly plan: Plan
  readonly uMm: number
}

/** Draws the parts of a section by hand; called with every frame. */
const useSection = (
  { running, uMm }: Omit<DrawnProps, 'plan'>,
  paths: (triangle: Triangle, section: SteelLine) => Partial<Record<Part, string>>,
) => {
  const group = useRef<SVGGElement>(null)
  const figures = useMemo(() => machineFigures(running.job, running.setUp), [running])
  useEachFrame(running, (frame) => {
    const { shape, setUp } = running
    const i = nearestColumn(shape.uMm, uMm)
    const section = sectionAt(shape, frame.vMm, uMm)
    const triangle = liveTriangle(setUp, figures, frame, shape.uMm[i] as number, section.backMm[0] as number)
    for (const [part, path] of Object.entries(paths(triangle, section)))
      group.current?.querySelector(`[data-part="${part}"]`)?.setAttribute('d', path)
  })
  return group
}

const bladePath = ({ job, setUp }: Running, triangle: Triangle, section: SteelLine, layout: SectionPlan['near']) =>
  `${pathOf(
    layout,
    bladeOutline(triangle, bevelPoints(triangle, section), setUp.projectionMm + BEYOND_BAR_MM, job.blade.thicknessMm),
  )}Z`

/** Wheel, fixture and blade, and the triangle of the three axes. */
export const Machine = ({ running, plan: { machine }, uMm }: DrawnProps) => {
  const group = useSection({ running, uMm }, (triangle, section) => {
    const [block, plate] = fixtureOutlines(triangle, running.setUp, running.job).map(
      (each) => `${pathOf(machine, each)}Z`,
    )
    return {
      block: block ?? '',
      plate: plate ?? '',
      blade: bladePath(running, triangle, section, machine),
      sides: `${pathOf(machine, [[0, 0], triangle.bar, triangle.edge])}Z`,
    }
  })
  return (
    <g ref={group}>
      <path className="wheel" d={wheelPath(machine)} />
      <path className="fixture-part" data-part="block" />
      <path className="fixture-part" data-part="plate" />
      <path className="blade" data-part="blade" />
      <path className="triangle-line" data-part="sides" />
    </g>
  )
}

/** The edge on the rim, magnified alike both ways: bevel as ground, its angle at the tip, and its chord. */
export const Near = ({ running, plan: { near, nearBox }, uMm }: DrawnProps) => {
  const clip = useId()
  const t = useTexts()
  const group = useSection({ running, uMm }, (triangle, section) => {
    const bevel = bevelPoints(triangle, section)
    const { sides, arc } = tipAngle(near, triangle, bevelAngles(section).tipRad, NEAR_ARC_PX)
    return {
      blade: bladePath(running, triangle, section, near),
      chord: pathOf(near, [bevel[0] ?? triangle.edge, bevel.at(-1) ?? triangle.edge]),
      angle: sides,
      arc,
    }
  })
  const [axleX, axleY] = near.px([0, 0])
  const { leftPx, topPx, widthPx, heightPx } = nearBox
  return (
    <g>
      <clipPath id={clip}>
        <rect x={leftPx} y={topPx} width={widthPx} height={heightPx} />
      </clipPath>
      <g clipPath={`url(#${clip})`} ref={group}>
        <circle className="wheel" cx={axleX} cy={axleY} r={near.radiusPx} />
        <path className="near-blade" data-part="blade" />
        <path className="dimension" data-part="angle" />
        <path className="dimension" data-part="arc" />
        <path className="axis" data-part="chord" />
        <text className="near-word" x={leftPx + 8} y={topPx + heightPx - 8}>
          {t('views:section.wheel')}
        </text>
      </g>
      <rect className="near-frame" x={leftPx} y={topPx} width={widthPx} height={heightPx} />
    </g>
  )
}

/** The triangle's sides in words, where there is room for them. */
export interface Lengths {
  readonly axes: string
  readonly projection: string
}

interface SidesProps {
  readonly plan: Plan
  readonly tip: string
  readonly lengths: Lengths | null
}

/** Figures stand so far from what they measure (px). */
const OFF_PX = 10

/** The angle at the tip beside its arc, and the lengths beside their sides. */
export const SideFigures = ({ plan: { near, machine, still }, tip, lengths }: SidesProps) => {
  const t = useTexts()
  const [tipX, tipY] = near.px(still.edge)
  const between = (a: Point, b: Point) => machine.px([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])
  const axes = between([0, 0], still.bar)
  const along = between(still.onBlade(0, 0), still.bar)
  return (
    <>
      <text className="near-word" x={tipX + OFF_PX} y={tipY + NEAR_ARC_PX} textAnchor="end">
        {tip}
      </text>
      {lengths && (
        <>
          <text x={axes[0] - OFF_PX} y={axes[1]} textAnchor="end">
            {t('views:section.axes', { length: lengths.axes })}
          </text>
          <text x={along[0] + 2 * OFF_PX} y={along[1]}>
            {t('views:section.projection', { length: lengths.projection })}
          </text>
        </>
      )}
    </>
  )
}

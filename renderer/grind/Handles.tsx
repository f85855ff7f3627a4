import { type RefObject, useEffect, useRef } from 'react'
import { quantities } from '../../geometry/quantities.ts'
import type { Side } from '../../geometry/report.ts'
import type { Stops } from '../scene/machine.ts'
import type { Project } from '../scene/SceneView.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useDrag } from '../ui/useDrag.ts'
import { draggedTurns, type StopDraft } from './stops.ts'

/** Handles follow every picture through this. */
export type DrawHandles = (project: Project) => void

interface HandlesProps {
  readonly stops: Stops
  readonly steered: boolean
  readonly lifted: boolean
  readonly widthMm: number
  readonly reachMm: number
  /** Where the load stands now: outwards is away from the middle on that side. */
  readonly loadPlaceMm: number
  readonly drawRef: RefObject<DrawHandles>
  readonly onStopDraft: (draft: StopDraft | null) => void
  readonly onStop: (draft: StopDraft) => void
  readonly onReachDraft: (mm: number | null) => void
  readonly onReach: (mm: number) => void
}

/** Rings to take hold of: the set screws' heads, and the load's arrow. Fields do the same by keyboard. */
export const Handles = (props: HandlesProps) => {
  const { stops, steered, lifted, drawRef } = props
  const leftStop = useRef<SVGGElement>(null)
  const rightStop = useRef<SVGGElement>(null)
  const load = useRef<SVGGElement>(null)
  const arrow = useRef<SVGPathElement>(null)
  const ends = useRef<readonly [number, number, number, number]>([0, 0, 1, 0])
  const t = useTexts()

  useEffect(() => {
    drawRef.current = (project) => {
      const move = (group: SVGGElement | null, [x, y]: readonly [number, number]) =>
        group?.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`)
      move(leftStop.current, project('stopLeft'))
      move(rightStop.current, project('stopRight'))
      const [tail, tip] = [project('loadTail'), project('load')]
      move(load.current, tail)
      arrow.current?.setAttribute('d', arrowPath(tail, tip))
      ends.current = [...project('edgeLeft'), ...project('edgeRight')]
    }
  }, [drawRef])

  const turn = useDrag<StopDraft>({
    at: (start, dx) => ({ ...start, turns: draggedTurns(start.turns, start.side === 'left' ? -dx : dx, MOST_TURNS) }),
    onDraft: props.onStopDraft,
    onEnd: props.onStop,
  })
  const outwards = props.loadPlaceMm < 0 ? -1 : 1
  const reach = useDrag<number>({
    at: (startMm, dx, dy) => draggedReachMm(startMm, outwards * alongPx(ends.current, dx, dy) * props.widthMm),
    onDraft: props.onReachDraft,
    onEnd: props.onReach,
  })
  const screw = (side: Side) => (
    <g
      ref={side === 'left' ? leftStop : rightStop}
      className="grind-handle"
      data-handle={side}
      {...turn({ side, turns: turnsOf(stops, side) })}
    >
      <title>{t(`grind:handle.${side === 'left' ? 'stopLeft' : 'stopRight'}`)}</title>
      <circle className="grind-hold" r={16} />
      <circle className="grind-ring" r={4.5} />
    </g>
  )
  return (
    <svg className="scene-handles" aria-hidden="true">
      {!lifted && <path ref={arrow} className="load-arrow-3d" />}
      {steered && screw('left')}
      {steered && screw('right')}
      {!lifted && (
        <g ref={load} className="grind-handle" data-handle="load" {...reach(props.reachMm)}>
          <title>{t('grind:handle.load')}</title>
          <circle className="grind-hold" r={16} />
          <circle className="grind-ring" r={4.5} />
        </g>
      )}
    </svg>
  )
}

const MOST_TURNS = quantities.motion.stopTurnsLeft.max

const turnsOf = (stops: Stops, side: Side): number => (side === 'left' ? stops.leftTurns : stops.rightTurns)

/** Share of the edge's length in the picture that a move covers along it. */
const alongPx = ([ax, ay, bx, by]: readonly [number, number, number, number], dx: number, dy: number): number =>
  (dx * (bx - ax) + dy * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)

/** Reach goes in half millimetres, finer than a finger is put down. */
const draggedReachMm = (startMm: number, moreMm: number): number => {
  const { min, max } = quantities.motion.fingerReachMm
  return Math.min(Math.max(Math.round((startMm + moreMm) * 2) / 2, min), max)
}

/** Head of the load's arrow (px). */
const HEAD_PX = 9

const arrowPath = ([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): string => {
  const length = Math.hypot(bx - ax, by - ay) || 1
  const [dx, dy] = [((bx - ax) / length) * HEAD_PX, ((by - ay) / length) * HEAD_PX]
  const head = `M${bx - dx - dy / 2.4} ${by - dy + dx / 2.4}L${bx} ${by}L${bx - dx + dy / 2.4} ${by - dy - dx / 2.4}Z`
  return `M${ax} ${ay}L${bx - dx} ${by - dy}${head}`
}

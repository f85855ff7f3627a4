import { type RefObject, useEffect, useRef } from 'react'
import type { Project } from '../../scene/SceneView.tsx'
import { toMiddle } from '../placeLabels.ts'
import { usePointRow } from '../pointRow.ts'
import type { Moment, Running } from '../useLiveGrind.ts'
import { axisOf } from './axis.ts'
import { HandHandle } from './HandHandle.tsx'
import { useKeeping } from './keeping.ts'
import type { HandleKind } from './kind.ts'
import { drawLoadArrow } from './loadArrow.ts'
import { SetHandle } from './SetHandle.tsx'
import type { Draft } from './useDraft.ts'
import { useKinds } from './useKinds.ts'
import type { SettingTold } from './useSetting.ts'

/** Handles follow every picture through this. */
export type DrawHandles = (project: Project) => void

interface HandlesProps extends SettingTold {
  readonly running: Running
  readonly moment: Moment
  readonly lifted: boolean
  readonly draft: Draft | null
  readonly drawRef: RefObject<DrawHandles>
  /** Told when a handle is taken hold of (true) and let go: before the first movement, and after the last. */
  readonly onHold: (held: boolean) => void
}

/** Everything on the machine that can be taken hold of. */
export const Handles = (props: HandlesProps) => {
  const { running, moment, lifted, draft, drawRef } = props
  const { job } = running
  const box = useRef<HTMLDivElement>(null)
  const projected = useRef<Project>(() => [0, 0])
  const keeping = useKeeping()
  const kinds = useKinds(running, lifted)
  const arrow = usePointRow<SVGPolygonElement>()
  useEffect(() => {
    if (!box.current) return
    const rings = ringsIn(box.current, kinds)
    const presses = kinds.some(({ id }) => id === 'reach')
    const draw = (project: Project): void => {
      projected.current = project
      for (const ring of rings) moveRing(ring, project)
      drawLoadArrow(arrow, project, presses)
    }
    drawRef.current = draw
    // A handle that has just come has no place yet.
    draw(projected.current)
  }, [drawRef, kinds, arrow])
  return (
    <div
      className="scene-handles"
      ref={box}
      onPointerDown={({ target }) => props.onHold(target instanceof Element && target.matches('.handle-hold'))}
      onLostPointerCapture={() => props.onHold(false)}
    >
      <svg className="scene-lines" aria-hidden="true">
        <polygon ref={arrow.ref} className="load-arrow-3d" />
      </svg>
      {!lifted && keeping.may('hand') && (
        <HandHandle
          running={running}
          moment={moment}
          edge={() => axisOf(projected.current, 'edgeLeft', 'edgeRight', job.blade.widthMm)}
        />
      )}
      {kinds.map((kind) => (
        <SetHandle
          key={kind.id}
          kind={kind}
          job={job}
          draft={draft?.id === kind.id ? draft.value : null}
          grip={(taken) => taken.grip(projected.current, moment.loadPlaceMm)}
          onDraft={props.onDraft}
          onKeep={props.onKeep}
        />
      ))}
    </div>
  )
}

/** A handle's ring in the page, with where it was last put (tenths of a px). */
interface Ring {
  readonly element: HTMLElement
  readonly anchors: HandleKind['anchors']
  xTenths: number
  yTenths: number
}

const ringsIn = (box: HTMLElement, kinds: readonly HandleKind[]): Ring[] => {
  const all = [...kinds, { id: 'hand', anchors: ['load'] as const }]
  return all.flatMap(({ id, anchors }) => {
    const element = box.querySelector<HTMLElement>(`[data-handle="${id}"]`)
    return element ? [{ element, anchors, xTenths: Number.NaN, yTenths: Number.NaN }] : []
  })
}

const at: [number, number] = [0, 0]

/** Its place is written as text; for a ring that has not moved none is made. */
const moveRing = (ring: Ring, project: Project): void => {
  toMiddle(project, ring.anchors, at)
  const xTenths = Math.round(10 * at[0])
  const yTenths = Math.round(10 * at[1])
  if (xTenths === ring.xTenths && yTenths === ring.yTenths) return
  ring.xTenths = xTenths
  ring.yTenths = yTenths
  ring.element.style.transform = `translate(${xTenths / 10}px, ${yTenths / 10}px)`
}

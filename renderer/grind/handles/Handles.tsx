import { type RefObject, useEffect, useRef } from 'react'
import type { Project } from '../../scene/SceneView.tsx'
import { middle } from '../placeLabels.ts'
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
  const { job, live } = running
  const box = useRef<HTMLDivElement>(null)
  const projected = useRef<Project>(() => [0, 0])
  const keeping = useKeeping()
  const kinds = useKinds(running, lifted)
  useEffect(() => {
    drawRef.current = (project) => {
      projected.current = project
      if (box.current) drawHandles(box.current, kinds, project)
    }
    // A handle that has just come has no place yet.
    if (box.current) drawHandles(box.current, kinds, projected.current)
  }, [drawRef, kinds])
  return (
    <div
      className="scene-handles"
      ref={box}
      onPointerDown={({ target }) => props.onHold(target instanceof Element && target.matches('.handle-hold'))}
      onLostPointerCapture={() => props.onHold(false)}
    >
      <svg className="scene-lines" aria-hidden="true">
        <path className="load-arrow-3d" />
      </svg>
      {!lifted && keeping.may('hand') && (
        <HandHandle
          job={job}
          live={live}
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

const drawHandles = (box: HTMLElement, kinds: readonly HandleKind[], project: Project): void => {
  const place = (id: string, [x, y]: readonly [number, number]): void => {
    const handle = box.querySelector<HTMLElement>(`[data-handle="${id}"]`)
    if (handle) handle.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`
  }
  for (const { id, anchors } of kinds) place(id, middle(project, anchors))
  place('hand', project('load'))
  drawLoadArrow(box, project)
}

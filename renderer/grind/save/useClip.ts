import { useEffect, useRef, useState } from 'react'
import { type Problem, problem } from '../../../geometry/result.ts'
import { handOverBytes } from '../../app/handOver.ts'
import { say, useApp } from '../../app/store.ts'
import type { Moment, Running } from '../useLiveGrind.ts'
import type { ClipForm } from './clip.ts'
import { type ClipChoice, planClip } from './clipPlan.ts'
import { fileName, type Pictured } from './pictured.ts'

interface ClipOrder {
  readonly plan: ClipChoice
  readonly form: ClipForm
  readonly view: Pictured
  readonly widthPx: number
}

/** The making of a clip: how far it is (null: none is being made), what went wrong, and its two keys. */
interface ClipMaking {
  readonly share: number | null
  readonly problems: readonly Problem[]
  make(order: ClipOrder): Promise<void>
  cancel(): void
}

/** Makes clips one at a time; the grind is put back where it stood, and a panel that is shut breaks off. */
export const useClip = ({ live, shape }: Running, moment: Moment): ClipMaking => {
  const [share, setShare] = useState<number | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const stopping = useRef<AbortController | null>(null)
  const code = useApp((app) => app.tool?.code ?? '')
  useEffect(() => () => stopping.current?.abort(), [])

  const film = async ({ plan, form, view, widthPx }: ClipOrder, signal: AbortSignal): Promise<readonly Problem[]> => {
    const planned = planClip(plan, shape)
    if (!planned.ok) return planned.problems
    setShare(0)
    // Read only now: what packs a film is larger than the rest of the screen.
    const { makeClip } = await import('./clip.ts')
    const { framesPerSecond } = plan
    const task = { live, run: shape.run, frames: planned.value, framesPerSecond, form, element: view.element, widthPx }
    const clip = await makeClip({ ...task, signal, onProgress: setShare })
    if (live.shape?.run === shape.run) live.seek(moment.step)
    if (!clip.ok) return clip.problems
    const file = fileName([code, view.name, `sweeps-${plan.fromSweep}-${plan.toSweep}`], form)
    handOverBytes(clip.value.bytes, clip.value.mediaType, file, 'out:handedOver')
    return []
  }
  const make = async (order: ClipOrder): Promise<void> => {
    const stop = new AbortController()
    stopping.current = stop
    const found = await film(order, stop.signal).catch(() => [problem('clipFailed')])
    setShare(null)
    const cancelled = found.some((each) => each.code === 'cancelled')
    if (cancelled) say('out:clip.cancelled')
    setProblems(cancelled ? [] : found)
  }
  return { share, problems, make, cancel: () => stopping.current?.abort() }
}

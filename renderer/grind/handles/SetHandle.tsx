import { useMemo, useRef } from 'react'
import type { Job } from '../../../geometry/job.ts'
import { useDrag } from '../../ui/useDrag.ts'
import { Frame } from './Frame.tsx'
import { KindField } from './KindField.tsx'
import type { Grip, HandleKind } from './kind.ts'
import { feelNotch } from './notch.ts'
import { keyed } from './range.ts'
import { type SettingTold, useSetting } from './useSetting.ts'

interface SetHandleProps extends SettingTold {
  readonly kind: HandleKind
  readonly job: Job
  /** What it has been moved to, as long as the job has not taken it. */
  readonly draft: number | null
  readonly grip: (kind: HandleKind) => Grip
}

/** A handle that changes the job: by pointer, by keys, by typing; one drag or one run of keys is one change. */
export const SetHandle = ({ kind, job, draft, grip, onDraft, onKeep }: SetHandleProps) => {
  const value = draft ?? kind.value
  const inWords = useMemo(() => kind.tell(value, kind.change(job, value)), [kind, job, value])
  const { told, run } = useSetting(kind, { onDraft, onKeep })
  const held = useRef<Grip>(() => 0)
  const drag = useDrag<number>({
    at: (_start, dxPx, dyPx) => {
      const next = held.current(dxPx, dyPx)
      if (kind.notch?.(next) && next !== value) feelNotch()
      return next
    },
    onDraft: told.onDraft,
    onEnd: told.onKeep,
  })(value)
  const key = (pressed: string, shift: boolean): boolean => {
    if (pressed === 'Escape') {
      run.giveUp()
      return false
    }
    const next = keyed(pressed, shift, run.value ?? value, kind.range)
    if (next !== null) run.to(next)
    return next !== null
  }
  return (
    <Frame
      id={kind.id}
      name={kind.name}
      hint={kind.hint}
      cursor={kind.cursor}
      value={value}
      range={kind.range}
      told={inWords}
      held={draft !== null}
      notch={draft !== null && (kind.notch?.(value) ?? false)}
      drag={{
        ...drag,
        onPointerDown: (event) => {
          run.keep()
          held.current = grip(kind)
          drag.onPointerDown(event)
        },
      }}
      onKey={(event) => key(event.key, event.shiftKey)}
      onLeave={run.keep}
      field={(onDone) => <KindField kind={kind} onDone={onDone} />}
    />
  )
}

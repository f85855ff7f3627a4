import { useEffect, useMemo, useRef } from 'react'
import type { Job } from '../../../geometry/job.ts'
import { useProblemAt } from '../../app/JobField.tsx'
import { forgetRefused } from '../../app/storeJob.ts'
import { FigureField } from '../../ui/FigureField.tsx'
import { useDrag } from '../../ui/useDrag.ts'
import { Frame } from './Frame.tsx'
import { useKeeping } from './keeping.ts'
import { createKeyRun } from './keyRun.ts'
import type { Grip, HandleKind } from './kind.ts'
import { feelNotch } from './notch.ts'
import { keyed } from './range.ts'

interface SetHandleProps {
  readonly kind: HandleKind
  readonly job: Job
  /** What it has been moved to, as long as the job has not taken it. */
  readonly draft: number | null
  readonly grip: (kind: HandleKind) => Grip
  readonly onDraft: (kind: HandleKind, value: number | null) => void
  readonly onKeep: (kind: HandleKind, value: number) => void
}

/** A handle that changes the job: by pointer, by keys, by typing; one drag or one run of keys is one change. */
export const SetHandle = ({ kind, job, draft, grip, onDraft, onKeep }: SetHandleProps) => {
  const value = draft ?? kind.value
  const inWords = useMemo(() => kind.tell(value, kind.change(job, value)), [kind, job, value])
  const latest = useRef({ kind, onDraft, onKeep })
  latest.current = { kind, onDraft, onKeep }
  const told = useMemo(
    () => ({
      onDraft: (next: number | null) => latest.current.onDraft(latest.current.kind, next),
      onKeep: (next: number) => latest.current.onKeep(latest.current.kind, next),
    }),
    [],
  )
  const run = useMemo(() => createKeyRun(told), [told])
  useEffect(() => run.keep, [run])
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

const KindField = ({ kind, onDone }: { readonly kind: HandleKind; readonly onDone: () => void }) => {
  const keeping = useKeeping()
  return (
    <FigureField
      {...(kind.typed && { range: kind.typed })}
      quantity={kind.path}
      value={kind.value}
      label={kind.name}
      size="small"
      problem={useProblemAt(kind.path)}
      onRestore={forgetRefused}
      onCommit={async (value) => {
        const taken = value !== null && (await keeping.keep(kind, value))
        if (taken) onDone()
        return taken
      }}
    />
  )
}

import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { type SetUp, setUpOf } from '../../../geometry/setUp.ts'
import type { Running } from '../useLiveGrind.ts'
import { useKeeping } from './keeping.ts'
import type { HandleId, HandleKind } from './kind.ts'

/** What a handle has been moved to, and the job as it would be. */
export interface Draft {
  readonly id: HandleId
  readonly value: number
  readonly caution: HandleKind['caution']
  readonly job: Running['job']
  readonly setUp: SetUp
}

/** A kept draft is shown until the grind has begun again with it, or for this long (ms) where it does not begin. */
const SETTLE_MS = 1500

/** What is being tried out by hand on the drawn machine, from the first move until the new grind is there. */
export const useDraft = (running: Running) => {
  const [draft, setDraft] = useState<Draft | null>(null)
  const timer = useRef(0)
  const { job, live } = running
  const keeping = useKeeping()
  const clear = useCallback(() => {
    clearTimeout(timer.current)
    setDraft(null)
  }, [])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the job that is ground is the trigger
  useEffect(clear, [job, clear])

  const show = (kind: HandleKind, value: number | null): void => {
    clear()
    if (value === null) return
    live.pause()
    const changed = kind.change(job, value)
    const setUp = setUpOf(changed)
    if (setUp.ok) setDraft({ id: kind.id, value, caution: kind.caution, job: changed, setUp: setUp.value })
  }
  const keep = async (kind: HandleKind, value: number): Promise<void> => {
    // Back where it was: nothing to keep, and no new grind to wait for.
    if (value === kind.value) return clear()
    show(kind, value)
    const taken = await keeping.keep(kind, value)
    clearTimeout(timer.current)
    if (taken) timer.current = window.setTimeout(clear, SETTLE_MS)
    else clear()
  }
  const setUpDraft = useMemo(() => draft && { job: draft.job, setUp: draft.setUp }, [draft])
  return { draft, setUpDraft, show, keep }
}

import { useEffect, useMemo, useRef } from 'react'
import { createKeyRun, type KeyRun, type RunListener } from './keyRun.ts'
import type { HandleKind } from './kind.ts'

/** What becomes of a handle that is moved. */
export interface SettingTold {
  /** On the way; null: given up. */
  readonly onDraft: (kind: HandleKind, value: number | null) => void
  readonly onKeep: (kind: HandleKind, value: number) => void
}

/** Who hears of a handle's values, as the handle stands now; and its run of key presses, which is one change and is kept when the handle goes. */
export const useSetting = (
  kind: HandleKind,
  { onDraft, onKeep }: SettingTold,
): { readonly told: RunListener; readonly run: KeyRun } => {
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
  return { told, run }
}

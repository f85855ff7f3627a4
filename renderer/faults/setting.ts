import { create } from 'zustand'
import type { Symptom } from '../../geometry/diagnose.ts'

/** What was seen on each iron, in this window. */
const useSeenBy = create<Readonly<Record<string, readonly Symptom[]>>>()(() => ({}))

const none: readonly Symptom[] = []

/** @returns what was seen on a tool */
export const useSeen = (toolId: string): readonly Symptom[] => useSeenBy((all) => all[toolId] ?? none)

/** Notes that something was seen on a tool, or was not. */
export const setSeen = (toolId: string, symptom: Symptom, seen: boolean): void =>
  useSeenBy.setState((all) => {
    const others = (all[toolId] ?? none).filter((each) => each !== symptom)
    return { [toolId]: seen ? [...others, symptom] : others }
  })

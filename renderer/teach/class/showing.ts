import { useEffect, useRef } from 'react'
import { create } from 'zustand'
import { CLASS_HASH } from '../../../main/contract/classView.ts'
import { say } from '../../app/store.ts'
import type { Running } from '../../grind/useLiveGrind.ts'
import { CLASS_WINDOW, openTeacherEnd, type Shown, type ShownModel } from './channel.ts'

/** What the class is shown, and whether there is a class view that shows it. */
export interface Showing {
  readonly here: boolean
  /** Whether anybody can see it: its window is not covered, its screen is there. */
  readonly seen: boolean
  readonly shown: Shown
}

const nothing: Shown = {
  ...{ heading: '', text: [], question: '', choices: [], verdict: '' },
  ...{ model: null, pointer: null, frozen: null },
}

export const useShowing = create<Showing>()(() => ({ here: false, seen: false, shown: nothing }))

let end: ReturnType<typeof openTeacherEnd> | null = null

/** How the machine stands that is there to be shown; asked only while a class looks on. */
let machine: (() => ShownModel | null) | null = null

/** A class view that opens is told everything; one that closes leaves nothing behind. */
const begin = (): void => {
  end ??= openTeacherEnd((here, seen) => {
    if (!here && useShowing.getState().here) say('teach:class.gone')
    useShowing.setState({ here, seen })
    if (here) show({ model: machine?.() ?? null })
  })
}

/** Shows the class something more, or something else: words at most, where there is no class view. */
export const show = (patch: Partial<Shown>): void => {
  const shown = { ...useShowing.getState().shown, ...patch }
  useShowing.setState({ shown })
  if (useShowing.getState().here) end?.show(shown)
}

/** Opens the class view in a window of its own, or brings it to the front; to be moved to the projector. */
export const openClassView = (): void => {
  begin()
  open(`${location.pathname}${CLASS_HASH}`, CLASS_WINDOW, 'popup,width=1280,height=800')
}

/** Keeps the machine as it stands beside what goes on, or lets it go. */
export const freeze = (): void => {
  const { shown } = useShowing.getState()
  show({ frozen: shown.frozen ? null : shown.model })
}

/** The class sees a moment at most this often while it plays (ms): as often as figures are renewed. */
const EVERY_MS = 100

/** What of a machine is followed: its moments, and whether it plays. */
type Followed = Pick<Running['live'], 'subscribe'> & { readonly latest: { readonly playing: boolean } | null }

/**
 * Shows the class a machine, moment by moment, from now on; where no class looks on, nothing is done for it.
 * @param stands how it stands; null: it has no moment yet
 * @returns how to end it
 */
export const followMachine = (live: Followed, stands: () => ShownModel | null): (() => void) => {
  begin()
  let shownMs = 0
  const tell = (): void => {
    if (!useShowing.getState().here) return
    const nowMs = performance.now()
    if (live.latest?.playing && nowMs - shownMs < EVERY_MS) return
    const model = stands()
    if (model === null) return
    shownMs = nowMs
    show({ model })
  }
  machine = stands
  tell()
  return live.subscribe('frame', tell)
}

/** Shows the class the machine as long as this is there. */
export const useShowModel = (running: Running, model: Omit<ShownModel, 'step' | 'job'>): void => {
  const latest = useRef(model)
  latest.current = model
  const text = JSON.stringify(model)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text says what of the model changed
  useEffect(
    () =>
      followMachine(running.live, () => {
        const frame = running.live.latest
        return frame?.run === running.shape.run ? { ...latest.current, job: running.job, step: frame.step } : null
      }),
    [running, text],
  )
  useEffect(
    () => () => {
      machine = null
      show({ model: null, pointer: null })
    },
    [],
  )
}

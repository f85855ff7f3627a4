import { useEffect } from 'react'
import { create } from 'zustand'
import { type AwakeLock, type AwakeState, createAwake } from './awake.ts'
import { useApp } from './store.ts'

interface AwakeReasons {
  readonly playing: boolean
  /** Said by whoever stands at the wheel and looks at the screen; until taken back, or the window closes. */
  readonly atWheel: boolean
  readonly state: AwakeState
}

/** Why the screen should stay on, and whether it does. */
export const useAwake = create<AwakeReasons>()(() => ({ playing: false, atWheel: false, state: 'off' }))

const awakeOfWindow = () =>
  createAwake(
    {
      request: 'wakeLock' in navigator ? (): Promise<AwakeLock> => navigator.wakeLock.request('screen') : null,
      isVisible: () => document.visibilityState === 'visible',
      onVisibility: (changed) => document.addEventListener('visibilitychange', changed),
    },
    (state) => useAwake.setState({ state }),
  )

let awake: ReturnType<typeof awakeOfWindow> | null = null

/** Keeps the screen on while a grind plays, where the setting says so, and while a job is done at the wheel. */
export const useKeepAwake = (): void => {
  const allowed = useApp((app) => app.settings.stayAwake === 'on')
  const playing = useAwake((reasons) => reasons.playing)
  const atWheel = useAwake((reasons) => reasons.atWheel)
  useEffect(() => {
    awake ??= awakeOfWindow()
    awake.want((allowed && playing) || atWheel)
  }, [allowed, playing, atWheel])
}

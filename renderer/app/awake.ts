/** Whether the screen is kept from going dark: not wanted, kept, refused by the system, or not possible in this window. */
export type AwakeState = 'off' | 'kept' | 'refused' | 'impossible'

/** What the system hands out for as long as the screen stays on. */
export interface AwakeLock {
  release(): Promise<void>
  addEventListener(type: 'release', listener: () => void): void
}

/** What keeping awake needs of the window; tests give a double. */
export interface AwakeWindow {
  /** Null: there is no such thing in this window. */
  readonly request: (() => Promise<AwakeLock>) | null
  isVisible(): boolean
  onVisibility(changed: () => void): void
}

/** Keeps the screen awake while that is wanted and the window is to be seen. */
export interface Awake {
  want(wanted: boolean): void
}

/**
 * The system takes the lock back when the window is hidden; it is asked for again when the window comes back. One request
 * is under way at a time: what was wanted meanwhile is looked at when it is answered.
 * @param told hears of every state
 */
export const createAwake = (
  { request, isVisible, onVisibility }: AwakeWindow,
  told: (state: AwakeState) => void,
): Awake => {
  let wanted = false
  let asking = false
  let lock: AwakeLock | null = null

  const isDue = (): boolean => wanted && isVisible()
  const letGo = (): void => {
    void lock?.release().catch(() => undefined)
    lock = null
    told('off')
  }
  const hold = (fresh: AwakeLock): void => {
    lock = fresh
    fresh.addEventListener('release', () => {
      if (lock !== fresh) return
      lock = null
      told('off')
    })
    told('kept')
  }
  const ask = async (take: () => Promise<AwakeLock>): Promise<void> => {
    asking = true
    try {
      hold(await take())
    } catch {
      told('refused')
    }
    asking = false
    if (lock && !isDue()) letGo()
  }
  const look = (): void => {
    if (!isDue()) {
      if (lock || !wanted) letGo()
    } else if (request === null) told('impossible')
    else if (!lock && !asking) void ask(request)
  }
  onVisibility(look)
  return {
    want: (next) => {
      if (next === wanted) return
      wanted = next
      look()
    },
  }
}

/** A run of key presses is over after this rest (ms): long enough to look, short enough not to wait for. */
export const REST_MS = 600

/** What hears of a run of key presses. */
export interface RunListener {
  /** On the way; null: given up. */
  onDraft(value: number | null): void
  /** Told once: one run, one change. */
  onKeep(value: number): void
}

/** Key presses that follow each other closely make one change. */
export interface KeyRun {
  /** Where the run has come to; null: none is under way. */
  readonly value: number | null
  to(value: number): void
  /** Ends the run now, as when the focus leaves. */
  keep(): void
  giveUp(): void
}

/** @returns a run that nobody has begun yet */
export const createKeyRun = (listener: RunListener): KeyRun => {
  let value: number | null = null
  let timer: ReturnType<typeof setTimeout> | undefined
  const end = (): void => {
    clearTimeout(timer)
    value = null
  }
  const keep = (): void => {
    const done = value
    end()
    if (done !== null) listener.onKeep(done)
  }
  return {
    get value() {
      return value
    },
    to: (next) => {
      clearTimeout(timer)
      value = next
      listener.onDraft(next)
      timer = setTimeout(keep, REST_MS)
    },
    keep,
    giveUp: () => {
      if (value === null) return
      end()
      listener.onDraft(null)
    },
  }
}

/** Restarts unasked, and within how long: a page that dies more often would die again. */
const MOST_RESTARTS = 2
const WITHIN_MS = 60_000

/** @returns whether something that died at a moment (ms) may be started again without asking */
export const countedRestarts = (): ((nowMs: number) => boolean) => {
  let restarts: readonly number[] = []
  return (nowMs) => {
    restarts = restarts.filter((atMs) => nowMs - atMs < WITHIN_MS)
    if (restarts.length >= MOST_RESTARTS) return false
    restarts = [...restarts, nowMs]
    return true
  }
}

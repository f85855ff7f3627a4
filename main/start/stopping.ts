import { setInterval } from 'node:timers/promises'

/** How soon after npm the program it started ends. */
const LOOK_MS = 500

const isRunning = (pid: number): boolean => {
  try {
    process.kill(pid, 0)
    return true
  } catch {
    return false
  }
}

/**
 * Resolves when npm, which started this process, is gone. Told to end, npm passes the word on to its shell and no further,
 * so the program has to see for itself; else it would stay behind and hold the data folder. Never, where npm is not above.
 */
const npmEnded = async (): Promise<void> => {
  const parent = process.ppid
  if (process.env.npm_lifecycle_event === undefined) return new Promise(() => undefined)
  for await (const _ of setInterval(LOOK_MS, undefined, { ref: false }))
    if (process.ppid !== parent || !isRunning(parent)) return
}

/** A terminal sends Ctrl-C to everything that runs in it, so a window of ours has heard it already; the rest only this process hears. */
export type WhyStop = 'interrupted' | 'ended'

/** Resolves when the user stops the program or its terminal or npm ends; a second Ctrl-C ends the process at once. */
export const askedToStop = (): Promise<WhyStop> =>
  new Promise((resolve) => {
    process.once('SIGINT', () => resolve('interrupted'))
    for (const signal of ['SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve('ended'))
    void npmEnded().then(() => resolve('ended'))
  })

import type { FromWorker, ToWorker } from './protocol.ts'
import type { SolverPort } from './spawn.ts'

/** How often a worker that owes an answer is looked at (ms), and how many looks in a row may find nothing. */
const LOOK_MS = 2500
const MOST_LOOKS = 6

/** What is always answered by a frame or by trouble. */
const answered: readonly ToWorker['type'][] = ['start', 'play', 'pause', 'seek', 'hold', 'release', 'press', 'remake']

/** A frame of a grind that goes on is not the last word. */
const isLastWord = (said: FromWorker): boolean =>
  said.type === 'trouble' || (said.type === 'frame' && !said.frame.playing)

const lookEvery = (look: () => void): (() => void) => {
  const timer = setInterval(look, LOOK_MS)
  return () => clearInterval(timer)
}

/**
 * A worker that is killed without a word is reported as failed all the same: one that owes a frame and is silent for some
 * seconds. Looks are counted, not time, so that a computer that slept blames nobody.
 * @param every how looks are repeated; tests give their own
 */
export const watch = (port: SolverPort, every: (look: () => void) => () => void = lookEvery): SolverPort => {
  let end: (() => void) | null = null
  let looks = 0
  const rest = (): void => {
    end?.()
    end = null
  }
  const look = (): void => {
    if (++looks <= MOST_LOOKS) return
    rest()
    port.terminate()
    outer.onerror?.(new Event('error') as ErrorEvent)
  }
  const outer: SolverPort = {
    onmessage: null,
    onerror: null,
    postMessage: (message, transfer) => {
      if (answered.includes(message.type)) {
        looks = 0
        end ??= every(look)
      }
      port.postMessage(message, transfer)
    },
    terminate: () => {
      rest()
      port.terminate()
    },
  }
  port.onmessage = (event) => {
    looks = 0
    if (isLastWord(event.data)) rest()
    outer.onmessage?.(event)
  }
  port.onerror = (event) => {
    rest()
    outer.onerror?.(event)
  }
  return outer
}

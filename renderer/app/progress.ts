import type { HostEvent } from '../../main/contract/events.ts'

/** Who waits for which call. */
const waiting = new Map<string, (done: number) => void>()

/** Hands on how far a call is. */
export const hearProgress = (event: HostEvent): void => {
  if (event.type === 'progress') waiting.get(event.callId)?.(event.done)
}

/** @param tell takes 0 to 1 as the work goes on. @returns what the work answers */
export const withProgress = async <T>(
  callId: string,
  tell: (done: number) => void,
  work: () => Promise<T>,
): Promise<T> => {
  waiting.set(callId, tell)
  try {
    return await work()
  } finally {
    waiting.delete(callId)
  }
}

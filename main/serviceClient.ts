import { failed, type Problem, problem, type Result } from '../geometry/result.ts'
import type { HostEvent } from './contract/events.ts'
import { type FolderLock, lockFolder } from './database/lock.ts'
import type { WorkerStart } from './serviceMessages.ts'
import { createWorkerKeeper, type WorkerKeeper } from './workerKeeper.ts'
import { startWorker } from './workerThread.ts'
import type { Blob } from './workshop/blobs.ts'

/** A host's hold on the services. Nothing here rejects: what goes wrong is answered as problems. */
export interface ServiceClient {
  /** Why the data cannot be used; empty when all is well. While there are any, every call answers them. */
  problems(): readonly Problem[]
  call(name: string, input: unknown, callId: string): Promise<Result<unknown>>
  cancel(callId: string): void
  /** @returns a function that ends the listening */
  onEvent(listener: (event: HostEvent) => void): () => void
  /** The bytes of a made file, or null where they are no longer kept. */
  blob(id: string): Promise<Blob | null>
  /** Keeps bytes for the calls that read a file. @returns their blob id, or null where nobody could take them */
  put(bytes: Uint8Array): Promise<string | null>
  /** Closes the data after what is being written, and gives the folder back. */
  close(): Promise<void>
}

const refusedClient = (problems: readonly Problem[]): ServiceClient => ({
  problems: () => problems,
  call: async () => failed(...problems),
  cancel: () => undefined,
  onEvent: () => () => undefined,
  blob: async () => null,
  put: async () => null,
  close: async () => undefined,
})

/** Why a call has no answer: the data could not be opened, or the worker was lost under it and another has taken its place. */
const reasonsOf = (keeper: WorkerKeeper): readonly Problem[] => {
  const problems = keeper.problems()
  return problems.length > 0 ? problems : [problem('serviceRestarted')]
}

const clientOf = (
  keeper: WorkerKeeper,
  listeners: Set<(event: HostEvent) => void>,
  lock: FolderLock,
): ServiceClient => ({
  problems: keeper.problems,
  call: async (name, input, callId) => {
    const reply = await keeper.ask((ticket) => ({ type: 'call', ticket, callId, name, input }))
    return reply?.type === 'answer' ? reply.result : failed(...reasonsOf(keeper))
  },
  cancel: (callId) => keeper.tell({ type: 'cancel', callId }),
  onEvent: (listener) => {
    listeners.add(listener)
    return () => void listeners.delete(listener)
  },
  blob: async (id) => {
    const reply = await keeper.ask((ticket) => ({ type: 'blob', ticket, id }))
    return reply?.type === 'blob' ? reply.blob : null
  },
  put: async (bytes) => {
    const reply = await keeper.ask((ticket) => ({ type: 'put', ticket, bytes }))
    return reply?.type === 'put' ? reply.id : null
  },
  close: async () => {
    await keeper.close()
    lock.release()
  },
})

const startLocked = async (start: WorkerStart, lock: FolderLock): Promise<ServiceClient> => {
  const listeners = new Set<(event: HostEvent) => void>()
  const emit = (event: HostEvent): void => {
    for (const listener of listeners) listener(event)
  }
  const keeper = createWorkerKeeper((onMessage) => startWorker(start, onMessage), emit)
  await keeper.begin()
  return clientOf(keeper, listeners, lock)
}

/**
 * Takes the data folder and starts the services on it. A folder that is in use, or data that cannot be opened, still
 * gives a client, whose calls say why: a window can then explain it.
 */
export const startServices = async (start: WorkerStart): Promise<ServiceClient> => {
  const lock = lockFolder(start.dataDir)
  return lock.ok ? startLocked(start, lock.value) : refusedClient(lock.problems)
}

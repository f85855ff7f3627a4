import type { Result } from '../../geometry/result.ts'
import type { CallInput, CallName, CallOutput } from './calls.ts'
import type { HostEvent } from './events.ts'

/** Most bytes of a file that is handed in: a workshop's rack with some hundred pictures. */
export const MOST_FILE_BYTES = 256 * 1024 * 1024

/**
 * The whole surface between a client and a host. The Electron preload exposes exactly this; the loopback host speaks it
 * over HTTP. A call always answers a Result: bad input, conflict or a lost worker are problems, never rejections.
 */
export interface Transport {
  /** @param callId chosen by the client; names the call for `cancel` and in progress events */
  call<N extends CallName>(name: N, input: CallInput<N>, callId: string): Promise<Result<CallOutput<N>>>
  /** Asks a running task to stop; it then answers with the problem `cancelled`. Unknown ids are ignored. */
  cancel(callId: string): void
  /** @returns a function that ends the listening */
  onEvent(listener: (event: HostEvent) => void): () => void
  /** Address from which the bytes of a blob can be fetched, in this client. */
  blobUrl(blobId: string): string
  /** Hands a file in, for a call that reads it by its blob id; refused where it is too large. */
  put(file: Blob): Promise<Result<{ readonly blobId: string }>>
}

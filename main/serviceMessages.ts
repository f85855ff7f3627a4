import type { Problem, Result } from '../geometry/result.ts'
import type { HostEvent } from './contract/events.ts'
import type { Blob } from './workshop/blobs.ts'

/** What passes between a host and the service worker. `ticket` names one request, whatever ids the clients chose. */
export type ToWorker =
  | {
      readonly type: 'call'
      readonly ticket: number
      readonly callId: string
      readonly name: string
      readonly input: unknown
    }
  | { readonly type: 'blob'; readonly ticket: number; readonly id: string }
  | { readonly type: 'put'; readonly ticket: number; readonly bytes: Uint8Array }
  | { readonly type: 'cancel'; readonly callId: string }
  | { readonly type: 'close' }

export type FromWorker =
  | { readonly type: 'ready' }
  | { readonly type: 'refused'; readonly problems: readonly Problem[] }
  | { readonly type: 'answer'; readonly ticket: number; readonly result: Result<unknown> }
  | { readonly type: 'blob'; readonly ticket: number; readonly blob: Blob | null }
  | { readonly type: 'put'; readonly ticket: number; readonly id: string }
  | { readonly type: 'event'; readonly event: HostEvent }

/** What the worker is started with. */
export interface WorkerStart {
  readonly dataDir: string
  readonly who: string
}

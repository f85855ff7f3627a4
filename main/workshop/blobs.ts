import type { MadeFile } from '../cards/makeCard.ts'
import { MOST_FILE_BYTES } from '../contract/transport.ts'

/** Made files kept for fetching; the oldest goes when one more comes. A window fetches at once, so a few are plenty. */
const BLOBS_KEPT = 16
/** Most bytes of all of them, so that files handed in one after another do not fill the memory: two of the largest. */
export const MOST_KEPT_BYTES = 2 * MOST_FILE_BYTES

/** Bytes made by a task, with what a host needs to hand them on. */
export interface Blob {
  readonly bytes: Uint8Array
  readonly fileName: string
  readonly mediaType: string
}

/** Made files, in memory only, by id. */
export interface Blobs {
  put(id: string, file: MadeFile, mediaType: string): void
  get(id: string): Blob | null
}

export const createBlobs = (): Blobs => {
  const kept = new Map<string, Blob>()
  const weight = () => [...kept.values()].reduce((sum, { bytes }) => sum + bytes.length, 0)
  return {
    put: (id, { bytes, fileName }, mediaType) => {
      kept.set(id, { bytes, fileName, mediaType })
      for (const oldest of [...kept.keys()]) {
        if (kept.size === 1 || (kept.size <= BLOBS_KEPT && weight() <= MOST_KEPT_BYTES)) break
        kept.delete(oldest)
      }
    },
    get: (id) => kept.get(id) ?? null,
  }
}

import type { MadeFile } from '../cards/makeCard.ts'

/** Made files kept for fetching; the oldest goes when one more comes. A window fetches at once, so a few are plenty. */
const BLOBS_KEPT = 16

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
  return {
    put: (id, { bytes, fileName }, mediaType) => {
      kept.set(id, { bytes, fileName, mediaType })
      const [oldest] = kept.keys()
      if (kept.size > BLOBS_KEPT && oldest !== undefined) kept.delete(oldest)
    },
    get: (id) => kept.get(id) ?? null,
  }
}

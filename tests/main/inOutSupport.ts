import type { CallInput, CallOutput } from '../../main/contract/calls.ts'
import { createBlobs } from '../../main/workshop/blobs.ts'
import { type Bench, countedIds, openOwnBench } from './support.ts'

/** A bench that files can be handed to, on a rack of one's own. */
export interface FileBench extends Bench {
  put(content: string | Uint8Array): string
  /** Takes something out. @returns the file's bytes */
  out(what: CallInput<'inOut.take'>): Promise<Uint8Array>
  bring(content: string | Uint8Array, more?: Partial<CallInput<'inOut.bring'>>): Promise<CallOutput<'inOut.bring'>>
  look(content: string | Uint8Array, more?: Partial<CallInput<'inOut.look'>>): Promise<CallOutput<'inOut.look'>>
}

/** @param mark tells this bench's ids from another's */
export const openFileBench = async (folder: string, mark = 'aaaaaaaa'): Promise<FileBench> => {
  const blobs = createBlobs()
  const ids = countedIds()
  const bench = await openOwnBench(folder, { blobs }, () => ids().replace('aaaaaaaa', mark))
  const put = (content: string | Uint8Array): string => {
    const id = crypto.randomUUID()
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content
    blobs.put(id, { bytes, fileName: '' }, 'application/octet-stream')
    return id
  }
  return {
    ...bench,
    put,
    out: async (what) => {
      const { blobId } = await bench.done('inOut.take', what)
      return blobs.get(blobId)?.bytes ?? new Uint8Array()
    },
    bring: (content, more = {}) => bench.done('inOut.bring', { blobId: put(content), ...more }),
    look: (content, more = {}) => bench.done('inOut.look', { blobId: put(content), ...more }),
  }
}

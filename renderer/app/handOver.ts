import { type Message, say } from './store.ts'
import { transport } from './transport.ts'

/** A file that was made, at an address of this window's own. */
export type MadeFile = NonNullable<Message['file']>

/** Lets the window's engine keep a file: it asks for a place, or puts it where downloads go. */
const download = ({ address, fileName }: MadeFile): void => {
  const link = document.createElement('a')
  link.href = address
  link.download = fileName
  link.click()
}

/** Keeps a file and says so; as long as that is said, the file can be dragged out of the window, or kept once more. */
export const handOver = (file: MadeFile, key: string, params: Message['params'] = {}): void => {
  download(file)
  say(key, { fileName: file.fileName, ...params }, null, file)
}

/** As `handOver`, for a file that a task has made. */
export const handOverBlob = (
  { blobId, fileName }: { readonly blobId: string; readonly fileName: string },
  key: string,
  params: Message['params'] = {},
): void => handOver({ address: transport.blobUrl(blobId), fileName }, key, params)

/** How long the bytes of a file stay at hand once another was handed over (ms): the engine reads them at its leisure. */
const KEPT_MS = 60_000

let lastAddress: string | null = null

/** As `handOver`, for a file that was made in this window. */
export const handOverBytes = (content: BlobPart, mediaType: string, fileName: string, key: string): void => {
  const former = lastAddress
  if (former !== null) setTimeout(() => URL.revokeObjectURL(former), KEPT_MS)
  lastAddress = URL.createObjectURL(new Blob([content], { type: mediaType }))
  handOver({ address: lastAddress, fileName }, key)
}

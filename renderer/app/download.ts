/** Lets the window's engine keep a file: it asks for a place, or puts it where downloads go. */
export const download = (address: string, fileName: string): void => {
  const link = document.createElement('a')
  link.href = address
  link.download = fileName
  link.click()
}

/** How long the bytes of a file stay at hand once it is handed over (ms): the engine reads them at its leisure. */
const KEPT_MS = 60_000

/** As `download`, for a file that was made in this window. */
export const downloadBytes = (content: BlobPart, mediaType: string, fileName: string): void => {
  const address = URL.createObjectURL(new Blob([content], { type: mediaType }))
  download(address, fileName)
  setTimeout(() => URL.revokeObjectURL(address), KEPT_MS)
}

import { useEffect } from 'react'
import { problem } from '../../../geometry/result.ts'
import { useApp } from '../store.ts'
import { call, transport } from '../transport.ts'
import { refuseFile } from './incoming.ts'
import { openFile } from './openFile.ts'

const isSheetOpen = (): boolean => document.querySelector('dialog[open]') !== null

/** Takes what waits at the host, one after the other. */
const takeOffered = async (): Promise<void> => {
  const taken = await call('file.take', {})
  if (!taken.ok) return
  for (const { blobId, fileName } of taken.value) {
    const response = await fetch(transport.blobUrl(blobId)).catch(() => null)
    if (response?.ok) await openFile(new File([await response.blob()], fileName))
    else refuseFile(fileName, [problem('fileGone')])
  }
}

/** Without it the window would leave its page for the file. */
const allow = (event: DragEvent): void => {
  if (event.dataTransfer?.types.includes('Files')) event.preventDefault()
}

const drop = (event: DragEvent): void => {
  const file = event.dataTransfer?.files[0]
  if (!file || event.defaultPrevented) return
  event.preventDefault()
  if (!isSheetOpen()) void openFile(file)
}

/** Opens files that were dropped anywhere on the window, or opened with the program, once the rack is there. */
export const useOpening = (): void => {
  const ready = useApp((app) => app.ready)
  useEffect(() => {
    addEventListener('dragover', allow)
    addEventListener('drop', drop)
    return () => {
      removeEventListener('dragover', allow)
      removeEventListener('drop', drop)
    }
  }, [])
  useEffect(() => {
    if (!ready) return
    void takeOffered()
    return transport.onEvent((event) => void (event.type === 'offered' && takeOffered()))
  }, [ready])
}

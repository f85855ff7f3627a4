import { useEffect } from 'react'

/** Files that the rack can be brought in from, by their names. */
const OURS = /\.(csv|tsv|json|zip)$/i

/** Takes files dropped anywhere on the window while no sheet is open; without it the window would leave its page for the file. */
export const useDropped = (onFile: (file: File) => void): void => {
  useEffect(() => {
    const allow = (event: DragEvent): void => {
      if (event.dataTransfer?.types.includes('Files')) event.preventDefault()
    }
    const drop = (event: DragEvent): void => {
      const file = event.dataTransfer?.files[0]
      if (!file || event.defaultPrevented || document.querySelector('dialog[open]')) return
      event.preventDefault()
      if (OURS.test(file.name)) onFile(file)
    }
    window.addEventListener('dragover', allow)
    window.addEventListener('drop', drop)
    return () => {
      window.removeEventListener('dragover', allow)
      window.removeEventListener('drop', drop)
    }
  }, [onFile])
}

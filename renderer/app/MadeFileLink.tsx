import { useTexts } from '../ui/texts.tsx'
import type { MadeFile } from './handOver.ts'

/** Chromium's own word for a file that a drag brings along: whoever it is dropped on fetches it from the address. */
const offerFile = (data: DataTransfer, { address, fileName }: MadeFile): void => {
  data.setData('DownloadURL', `application/octet-stream:${fileName}:${new URL(address, location.href).href}`)
  data.effectAllowed = 'copy'
}

/** A file that was made: pressed, it is kept once more; dragged, it goes where it is dropped. */
export const MadeFileLink = ({ file }: { readonly file: MadeFile }) => {
  const t = useTexts()
  return (
    <a
      className="word"
      href={file.address}
      download={file.fileName}
      title={t('common:dragOut')}
      draggable
      onDragStart={(event) => offerFile(event.dataTransfer, file)}
    >
      {t('common:madeFile')}
    </a>
  )
}

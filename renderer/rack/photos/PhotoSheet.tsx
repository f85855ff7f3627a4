import { type FormEvent, useState } from 'react'
import type { Problem, Result } from '../../../geometry/result.ts'
import type { Photo } from '../../../main/contract/extras.ts'
import { transport } from '../../app/transport.ts'
import { shortDate } from '../../ui/dates.ts'
import { TextEntry } from '../../ui/Entry.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { captionPhoto, removePhoto } from '../edits.ts'

interface PhotoSheetProps {
  readonly photo: Photo
  readonly title: string
  readonly onClose: () => void
}

/** One picture as large as there is room, with what is said of it. */
export const PhotoSheet = ({ photo, title, onClose }: PhotoSheetProps) => {
  const t = useTexts()
  const [caption, setCaption] = useState(photo.caption)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const done = (made: Result<unknown>) => (made.ok ? onClose() : setProblems(made.problems))
  const save = async (event: FormEvent) => {
    event.preventDefault()
    done(await captionPhoto(photo, caption))
  }
  return (
    <Sheet title={title} onClose={onClose}>
      <img
        className="photo-large"
        src={transport.blobUrl(photo.id)}
        alt={title}
        width={photo.widthPx}
        height={photo.heightPx}
      />
      <p className="muted">{t('photos:taken', { day: shortDate(photo.at) })}</p>
      <form onSubmit={(event) => void save(event)}>
        <TextEntry name={t('photos:caption')} value={caption} onChange={setCaption} />
        <Problems problems={problems} />
        <p className="sheet-keys">
          <button type="submit" className="key key-main">
            {t('rack:sheet.save')}
          </button>
          <button type="button" className="word" onClick={async () => done(await removePhoto(photo))}>
            {t('photos:remove')}
          </button>
        </p>
      </form>
    </Sheet>
  )
}

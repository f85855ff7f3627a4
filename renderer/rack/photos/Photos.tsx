import { useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { Tool } from '../../../main/contract/entities.ts'
import { transport } from '../../app/transport.ts'
import { FileKey } from '../../ui/FileKey.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { addPhoto } from '../edits.ts'
import { PhotoSheet } from '../sheets.tsx'
import { smaller } from './smaller.ts'
import { usePhotos } from './usePhotos.ts'
import './photos.css'

/** Pictures of a tool: small in a row, each large on a sheet of its own. */
export const Photos = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const photos = usePhotos(tool.id)
  const [openId, setOpenId] = useState<string | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return
    const picture = await smaller(file)
    const added = picture.ok ? await addPhoto(tool, picture.value) : picture
    setProblems(added.ok ? [] : added.problems)
  }
  const nameOf = (caption: string, at: number) => caption || t('photos:nth', { nth: at + 1, of: photos.length })
  const opened = photos.find(({ id }) => id === openId)
  return (
    <section className="detail-list" aria-label={t('photos:heading')}>
      <h3>{t('photos:heading')}</h3>
      {photos.length > 0 && (
        <ul className="photos">
          {photos.map(({ id, caption, widthPx, heightPx }, i) => (
            <li key={id}>
              <button type="button" onClick={() => setOpenId(id)}>
                <img src={transport.blobUrl(id)} alt={nameOf(caption, i)} width={widthPx} height={heightPx} />
              </button>
            </li>
          ))}
        </ul>
      )}
      <Problems problems={problems} />
      <FileKey name={t('photos:add')} accept="image/jpeg,image/png,image/webp" onPick={take} />
      {opened && (
        <PhotoSheet
          photo={opened}
          title={nameOf(opened.caption, photos.indexOf(opened))}
          onClose={() => setOpenId(null)}
        />
      )}
    </section>
  )
}

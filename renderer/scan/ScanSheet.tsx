import { type DragEvent, type FormEvent, useEffect, useRef, useState } from 'react'
import { failed, type Problem, problem, type Result } from '../../geometry/result.ts'
import { readMark } from '../../main/contract/codes.ts'
import { TextEntry } from '../ui/Entry.tsx'
import { FileKey } from '../ui/FileKey.tsx'
import { Problems } from '../ui/Problems.tsx'
import { decoded } from '../ui/picture.ts'
import { Sheet } from '../ui/Sheet.tsx'
import { useTexts } from '../ui/texts.tsx'
import { CameraPart } from './CameraPart.tsx'
import { useMarks } from './marks.ts'
import { openCode } from './openCode.ts'
import { readPicture } from './readPicture.ts'
import './scan.css'

/** Most of a strange code that is shown. */
const MOST_SHOWN = 60

const openMark = (text: string): Promise<Result<null>> =>
  readMark(text) === null
    ? Promise.resolve(failed(problem('codeNotOurs', '', { text: text.slice(0, MOST_SHOWN) })))
    : openCode(text)

const readFile = async (file: File): Promise<Result<string>> => {
  const picture = await decoded(file)
  if (!picture.ok) return picture
  const { width: widthPx, height: heightPx } = picture.value
  const text = await readPicture({ source: picture.value, widthPx, heightPx })
  picture.value.close()
  return text === null ? failed(problem('codeNotSeen', '', { file: file.name })) : { ok: true, value: text }
}

/** Opens something by its code: typed, held before the camera, read from a picture, or by a reader at the keyboard. */
export const ScanSheet = ({ onClose }: { readonly onClose: () => void }) => {
  const t = useTexts()
  const [typed, setTyped] = useState('')
  const { problems, open } = useOpening(onClose)
  const form = useRef<HTMLFormElement>(null)
  // The sheet itself has put the focus on its first key.
  useEffect(() => form.current?.querySelector('input')?.focus(), [])
  useMarks((read) => void open(`“${read.code}”`, () => openCode(read.code)))
  const send = (event: FormEvent) => {
    event.preventDefault()
    if (typed.trim() !== '') void open(typed, () => openCode(typed))
  }
  const pick = async (file: File | undefined) => {
    if (!file) return
    await open(file, async () => {
      const read = await readFile(file)
      return read.ok ? openMark(read.value) : read
    })
  }
  return (
    <Sheet title={t('scan:title')} onClose={onClose}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a picture may be dropped here, which the key beside it does as well */}
      <div
        className="scan"
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => void pick(dropped(event))}
      >
        <p>{t('scan:how')}</p>
        <form ref={form} className="scan-typed" onSubmit={send}>
          <TextEntry name={t('scan:code')} value={typed} onChange={setTyped} />
          <button type="submit" className="key key-main">
            {t('scan:go')}
          </button>
        </form>
        <Problems problems={problems} />
        <CameraPart onRead={(text) => void open(text, () => openMark(text))} />
        <div className="scan-file">
          <FileKey name={t('scan:picture')} accept="image/*" onPick={pick} />
          <p className="muted">{t('scan:drop')}</p>
        </div>
      </div>
    </Sheet>
  )
}

const dropped = (event: DragEvent): File | undefined => {
  event.preventDefault()
  return event.dataTransfer.files[0]
}

/** Opens what was read and closes the sheet, or keeps what was wrong with it; the same thing read again and again is looked up once. */
const useOpening = (onOpened: () => void) => {
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const last = useRef<unknown>(null)
  const open = async (what: unknown, look: () => Promise<Result<null>>): Promise<void> => {
    if (what === last.current) return
    last.current = what
    const opened = await look()
    if (opened.ok) return onOpened()
    setProblems(opened.problems)
  }
  return { problems, open }
}

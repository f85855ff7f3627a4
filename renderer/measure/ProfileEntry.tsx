import { useState } from 'react'
import { readProfileText } from '../../geometry/profileText.ts'
import type { Problem } from '../../geometry/result.ts'
import { FileKey } from '../ui/FileKey.tsx'
import { Problems } from '../ui/Problems.tsx'
import { decoded } from '../ui/picture.ts'
import { useTexts } from '../ui/texts.tsx'
import { changeSheet } from './bench.ts'
import type { EntriesProps } from './Entries.tsx'
import { LastTime } from './LastTime.tsx'
import { Photograph } from './Photograph.tsx'
import { Choices, Preview, type Reading, takingOf, usualReading } from './ProfilePreview.tsx'
import './ways.css'

interface Picked {
  readonly name: string
  readonly text: string
}

/** Two columns of a text file; what they are is said, never guessed, and what comes of it is shown before it is taken. */
export const ProfileEntry = ({ tool, sheet, newest }: EntriesProps) => {
  const t = useTexts()
  const [picked, setPicked] = useState<Picked | null>(null)
  const [reading, setReading] = useState<Reading>(usualReading)
  const taken = picked && readProfileText(picked.text, takingOf(reading), tool.widthMm)
  const pick = async (file: File | undefined) => {
    if (file) setPicked({ name: file.name, text: await file.text() })
  }
  const take = () => {
    if (!picked || !taken?.ok) return
    changeSheet(tool.id, { profile: { points: taken.value.points, name: picked.name } })
    setPicked(null)
  }
  return (
    <section
      className="entries-profile"
      aria-label={t('measure:way.trace')}
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault()
        void pick(event.dataTransfer.files[0])
      }}
    >
      <p className="muted">{t('measure:profile.how')}</p>
      {!picked && <LastTime tool={tool} newest={newest} />}
      <div className="entries-files">
        <FileKey name={t('measure:profile.pick')} accept=".csv,.txt,.tsv,text/csv,text/plain" onPick={pick} />
        <PhotographKey tool={tool} />
        {sheet.profile && !picked && (
          <>
            <span>{t('measure:profile.taken', { name: sheet.profile.name, count: sheet.profile.points.length })}</span>
            <button type="button" className="word" onClick={() => changeSheet(tool.id, { profile: null })}>
              {t('measure:profile.drop')}
            </button>
          </>
        )}
      </div>
      {picked && (
        <div className="entries-preview">
          <Choices reading={reading} onChange={(patch) => setReading({ ...reading, ...patch })} />
          <Preview name={picked.name} taken={taken} onTake={take} onDrop={() => setPicked(null)} />
        </div>
      )}
    </section>
  )
}

/** Opens a photograph to trace the edge on it. */
const PhotographKey = ({ tool }: Pick<EntriesProps, 'tool'>) => {
  const t = useTexts()
  const [opened, setOpened] = useState<{ readonly picture: ImageBitmap; readonly name: string } | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const open = async (file: File | undefined) => {
    if (!file) return
    const picture = await decoded(file)
    setProblems(picture.ok ? [] : picture.problems)
    if (picture.ok) setOpened({ picture: picture.value, name: file.name })
  }
  return (
    <>
      <FileKey name={t('measure:photograph.pick')} accept="image/jpeg,image/png,image/webp" onPick={open} />
      <Problems problems={problems} />
      {opened && (
        <Photograph
          tool={tool}
          picture={opened.picture}
          name={opened.name}
          onTake={(profile) => changeSheet(tool.id, { profile })}
          onClose={() => setOpened(null)}
        />
      )}
    </>
  )
}

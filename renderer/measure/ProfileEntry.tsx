import { useState } from 'react'
import { type ProfileTaking, readProfileText, type TakenProfile } from '../../geometry/profileText.ts'
import type { Problem, Result } from '../../geometry/result.ts'
import { MM_PER_INCH, MM_PER_THOU } from '../../geometry/units.ts'
import { SelectEntry } from '../ui/Entry.tsx'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { changeSheet } from './bench.ts'
import type { EntriesProps } from './Entries.tsx'
import { Photograph } from './Photograph.tsx'
import { decoded } from './picture.ts'
import './ways.css'

const unitsMm = { mm: 1, um: 0.001, inch: MM_PER_INCH, thou: MM_PER_THOU } as const
type UnitKey = keyof typeof unitsMm
const unitKeys = Object.keys(unitsMm) as UnitKey[]

interface Reading {
  readonly placeUnit: UnitKey
  readonly heightUnit: UnitKey
  readonly from: ProfileTaking['from']
  readonly of: ProfileTaking['of']
}

interface Picked {
  readonly name: string
  readonly text: string
}

/** Two columns of a text file; what they are is said, never guessed, and what comes of it is shown before it is taken. */
export const ProfileEntry = ({ tool, sheet }: EntriesProps) => {
  const t = useTexts()
  const [picked, setPicked] = useState<Picked | null>(null)
  const [reading, setReading] = useState<Reading>({ placeUnit: 'mm', heightUnit: 'mm', from: 'middle', of: 'gaps' })
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
      <div className="entries-files">
        <label className="key file-key">
          {t('measure:profile.pick')}
          <input
            type="file"
            accept=".csv,.txt,.tsv,text/csv,text/plain"
            onChange={(event) => {
              void pick(event.target.files?.[0])
              event.target.value = ''
            }}
          />
        </label>
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
      <label className="key file-key">
        {t('measure:photograph.pick')}
        <input
          type="file"
          accept="image/jpeg,image/png,image/webp"
          onChange={(event) => {
            void open(event.target.files?.[0])
            event.target.value = ''
          }}
        />
      </label>
      {problems.map((problem) => (
        <p key={problem.code} className="caution" role="alert">
          {problemSentence(t, problem)}
        </p>
      ))}
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

const takingOf = ({ placeUnit, heightUnit, from, of }: Reading): ProfileTaking => ({
  placeUnitMm: unitsMm[placeUnit],
  heightUnitMm: unitsMm[heightUnit],
  from,
  of,
})

interface ChoicesProps {
  readonly reading: Reading
  readonly onChange: (patch: Partial<Reading>) => void
}

const Choices = ({ reading, onChange }: ChoicesProps) => {
  const t = useTexts()
  const units = unitKeys.map((value) => ({ value, name: t(`measure:profile.unit.${value}`) }))
  const froms = (['middle', 'leftCorner'] as const).map((value) => ({
    value,
    name: t(`measure:profile.from.${value}`),
  }))
  const kinds = (['gaps', 'heights'] as const).map((value) => ({ value, name: t(`measure:profile.of.${value}`) }))
  return (
    <div className="entries-choices">
      <SelectEntry
        name={t('measure:profile.placeUnit')}
        value={reading.placeUnit}
        options={units}
        onChange={(placeUnit) => onChange({ placeUnit })}
      />
      <SelectEntry
        name={t('measure:profile.fromName')}
        value={reading.from}
        options={froms}
        onChange={(from) => onChange({ from })}
      />
      <SelectEntry
        name={t('measure:profile.heightUnit')}
        value={reading.heightUnit}
        options={units}
        onChange={(heightUnit) => onChange({ heightUnit })}
      />
      <SelectEntry
        name={t('measure:profile.ofName')}
        value={reading.of}
        options={kinds}
        onChange={(of) => onChange({ of })}
      />
    </div>
  )
}

interface PreviewProps {
  readonly name: string
  readonly taken: Result<TakenProfile> | null
  readonly onTake: () => void
  readonly onDrop: () => void
}

/** How many of the first rows are shown. */
const SHOWN_ROWS = 3

const Preview = ({ name, taken, onTake, onDrop }: PreviewProps) => {
  const t = useTexts()
  if (taken === null) return null
  if (!taken.ok) {
    return (
      <div className="entries-found">
        {taken.problems.map((problem) => (
          <p key={problem.code} className="caution" role="alert">
            {name}: {problemSentence(t, problem)}
          </p>
        ))}
        <button type="button" className="word" onClick={onDrop}>
          {t('measure:profile.leave')}
        </button>
      </div>
    )
  }
  const { points, rows, notices } = taken.value
  const first = points.slice(0, SHOWN_ROWS).map(({ uMm, gapMm }) => `${uMm.toFixed(1)} | ${gapMm.toFixed(3)}`)
  return (
    <div className="entries-found">
      <p>{t('measure:profile.found', { name, count: rows })}</p>
      <p className="muted">{t('measure:profile.first', { rows: first.join(', ') })}</p>
      {notices.map(({ code, params }) => (
        <p key={code} className="caution">
          {t(`problems:${code}`, params)}
        </p>
      ))}
      <button type="button" className="key" onClick={onTake}>
        {t('measure:profile.take')}
      </button>
      <button type="button" className="word" onClick={onDrop}>
        {t('measure:profile.leave')}
      </button>
    </div>
  )
}

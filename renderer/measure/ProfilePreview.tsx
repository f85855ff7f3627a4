import type { ProfileTaking, TakenProfile } from '../../geometry/profileText.ts'
import type { Result } from '../../geometry/result.ts'
import { MM_PER_INCH, MM_PER_THOU } from '../../geometry/units.ts'
import { fixed } from '../../main/contract/figures.ts'
import { SelectEntry } from '../ui/Entry.tsx'
import { Problems } from '../ui/Problems.tsx'
import { useTexts } from '../ui/texts.tsx'

const unitsMm = { mm: 1, um: 0.001, inch: MM_PER_INCH, thou: MM_PER_THOU } as const
type UnitKey = keyof typeof unitsMm
const unitKeys = Object.keys(unitsMm) as UnitKey[]

/** How the columns of a file are said to be. */
export interface Reading {
  readonly placeUnit: UnitKey
  readonly heightUnit: UnitKey
  readonly from: ProfileTaking['from']
  readonly of: ProfileTaking['of']
}

export const usualReading: Reading = { placeUnit: 'mm', heightUnit: 'mm', from: 'middle', of: 'gaps' }

/** @returns the same as the engine takes it */
export const takingOf = ({ placeUnit, heightUnit, from, of }: Reading): ProfileTaking => ({
  placeUnitMm: unitsMm[placeUnit],
  heightUnitMm: unitsMm[heightUnit],
  from,
  of,
})

interface ChoicesProps {
  readonly reading: Reading
  readonly onChange: (patch: Partial<Reading>) => void
}

/** What the two columns are. */
export const Choices = ({ reading, onChange }: ChoicesProps) => {
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

/** What comes of a file, or why nothing does. */
export const Preview = ({ name, taken, onTake, onDrop }: PreviewProps) => {
  const t = useTexts()
  if (taken === null) return null
  if (!taken.ok) {
    return (
      <div className="entries-found">
        <Problems problems={taken.problems} of={name} />
        <button type="button" className="word" onClick={onDrop}>
          {t('measure:profile.leave')}
        </button>
      </div>
    )
  }
  const { points, rows, notices } = taken.value
  const first = points.slice(0, SHOWN_ROWS).map(({ uMm, gapMm }) => `${fixed(uMm, 1)} | ${fixed(gapMm, 3)}`)
  return (
    <div className="entries-found">
      <p>{t('measure:profile.found', { name, count: rows })}</p>
      <p className="muted">{t('measure:profile.first', { rows: first.join('; ') })}</p>
      {notices.map(({ code, params }) => (
        <p key={code} className="caution">
          {t(`problems:${code}`, params)}
        </p>
      ))}
      <p className="entries-take">
        <button type="button" className="key" onClick={onTake}>
          {t('measure:profile.take')}
        </button>
        <button type="button" className="word" onClick={onDrop}>
          {t('measure:profile.leave')}
        </button>
      </p>
    </div>
  )
}

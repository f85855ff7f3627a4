import { useId, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { ToolDraft } from '../../../main/contract/entities.ts'
import { useApp } from '../../app/store.ts'
import { FigureField } from '../../ui/FigureField.tsx'
import type { MadeFieldProps } from '../../ui/fieldSpec.ts'
import { problemSentence, useTexts } from '../../ui/texts.tsx'
import { purposeNamed } from '../edits.ts'
import './toolSheet.css'

type Curve = ToolDraft['curves'][number]

/** What a new curve begins with: that of a smoothing iron, which most begin with. Common practice. */
const newCurve = { reliefMm: 0.1, shavingDepthMm: 0.05 }

/** The curves that an iron is ground to by turns, each for a purpose. */
export const CurvesField = ({ name, value, problem, onChange }: MadeFieldProps) => {
  const t = useTexts()
  const purposes = useApp((app) => app.purposes)
  const curves = (value as readonly Curve[] | undefined) ?? []
  const nameOf = (id: string) => purposes.find((purpose) => purpose.id === id)?.name ?? ''
  const change = (at: number, patch: Partial<Curve>) =>
    onChange(curves.map((curve, i) => (i === at ? { ...curve, ...patch } : curve)))
  return (
    <div className="fields-whole curves-field">
      <p className="entry-name">{name}</p>
      <ul>
        {curves.map((curve, i) => (
          <li key={curve.purposeId}>
            <strong>{nameOf(curve.purposeId)}</strong>
            <FigureField
              quantity="aim.reliefMm"
              size="small"
              value={curve.reliefMm}
              onCommit={(reliefMm) => change(i, { reliefMm: reliefMm ?? 0 })}
            />
            <FigureField
              quantity="aim.shavingDepthMm"
              size="small"
              value={curve.shavingDepthMm}
              onCommit={(next) => next !== null && change(i, { shavingDepthMm: next })}
            />
            <button
              type="button"
              className="word"
              aria-label={t('rack:curves.takeOffOf', { purpose: nameOf(curve.purposeId) })}
              onClick={() => onChange(curves.filter((_, at) => at !== i))}
            >
              {t('rack:curves.takeOff')}
            </button>
          </li>
        ))}
      </ul>
      <AddCurve curves={curves} onAdd={(purposeId) => onChange([...curves, { purposeId, ...newCurve }])} />
      <span className="figure-problem">{problem}</span>
    </div>
  )
}

interface AddCurveProps {
  readonly curves: readonly Curve[]
  readonly onAdd: (purposeId: string) => void
}

/** A purpose by its name; one that the workshop has not yet is put among its purposes. */
const AddCurve = ({ curves, onAdd }: AddCurveProps) => {
  const t = useTexts()
  const id = useId()
  const purposes = useApp((app) => app.purposes)
  const [typed, setTyped] = useState('')
  const [trouble, setTrouble] = useState<string | null>(null)
  const add = async () => {
    const found = await purposeNamed(typed)
    if (!found.ok) return setTrouble(problemSentence(t, found.problems[0] as Problem))
    if (curves.some(({ purposeId }) => purposeId === found.value))
      return setTrouble(t('rack:curves.there', { purpose: typed.trim() }))
    setTrouble(null)
    setTyped('')
    onAdd(found.value)
  }
  return (
    <div className="curves-add">
      <div className="entry">
        <label className="entry-name" htmlFor={id}>
          {t('rack:curves.another')}
        </label>
        <input
          id={id}
          type="text"
          list={`${id}-known`}
          maxLength={120}
          value={typed}
          aria-describedby={`${id}-problem`}
          onChange={(event) => setTyped(event.target.value)}
        />
        <datalist id={`${id}-known`}>
          {purposes.map((purpose) => (
            <option key={purpose.id} value={purpose.name} />
          ))}
        </datalist>
        <span className="figure-problem" id={`${id}-problem`} role="alert">
          {trouble}
        </span>
      </div>
      <button type="button" className="word" disabled={typed.trim() === ''} onClick={() => void add()}>
        {t('rack:curves.add')}
      </button>
    </div>
  )
}

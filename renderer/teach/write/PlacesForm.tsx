import { useId, useState } from 'react'
import { benchQuantities } from '../../../geometry/lesson/bench.ts'
import type { Change } from '../../../geometry/lesson/lesson.ts'
import { quantityOfPlace } from '../../../geometry/lesson/state.ts'
import { quantities, quantityAt } from '../../../geometry/quantities.ts'
import { FigureField } from '../../ui/FigureField.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { usePlaceNames } from '../usePlaceNames.ts'

/** Everything of a state that is a figure, by its place: of the job, of its second setting, of the bench. */
const places: readonly string[] = [
  ...(['blade', 'station', 'fixture', 'aim', 'motion', 'errors'] as const).flatMap((section) =>
    Object.keys(quantities[section]).map((key) => `${section}.${key}`),
  ),
  ...['stopTurnsLeft', 'stopTurnsRight', 'fingerReachMm', 'sweeps'].map((key) => `second.${key}`),
  ...Object.keys(benchQuantities).map((key) => `bench.${key}`),
]

interface AddPlaceProps {
  readonly name: string
  readonly taken: readonly string[]
  readonly onAdd: (place: string) => void
}

/** Chooses one more place from all that there are. */
const AddPlace = ({ name, taken, onAdd }: AddPlaceProps) => {
  const t = useTexts()
  const id = useId()
  const nameOf = usePlaceNames()
  const left = places.filter((place) => !taken.includes(place))
  const [chosen, setChosen] = useState('')
  const place = left.includes(chosen) ? chosen : (left[0] ?? '')
  return (
    <div className="teach-row-form">
      <div className="entry">
        <label className="entry-name" htmlFor={id}>
          {name}
        </label>
        <select id={id} value={place} onChange={(event) => setChosen(event.target.value)}>
          {left.map((each) => (
            <option key={each} value={each}>
              {nameOf(each)}
            </option>
          ))}
        </select>
      </div>
      <button type="button" className="word" onClick={() => onAdd(place)}>
        {t('write:addPlace')}
      </button>
    </div>
  )
}

interface SetFormProps {
  readonly set: Change
  readonly onChange: (set: Change) => void
}

/** What a step sets, figure by figure; words and empty entries of a file stay as they are. */
export const SetForm = ({ set, onChange }: SetFormProps) => {
  const t = useTexts()
  const nameOf = usePlaceNames()
  const without = (place: string): Change => Object.fromEntries(Object.entries(set).filter(([each]) => each !== place))
  return (
    <fieldset className="write-places">
      <legend>{t('write:set')}</legend>
      {Object.entries(set).map(([place, value]) => {
        const quantity = quantityOfPlace(place)
        return (
          <div key={place} className="teach-row-form">
            {quantity && typeof value === 'number' ? (
              <FigureField
                quantity={quantity}
                label={nameOf(place)}
                value={value}
                onCommit={(next) => next !== null && onChange({ ...set, [place]: next })}
              />
            ) : (
              <span>
                {nameOf(place)}: {value ?? t('common:field.empty')}
              </span>
            )}
            <button
              type="button"
              className="word"
              aria-label={t('write:removePlace', { name: nameOf(place) })}
              onClick={() => onChange(without(place))}
            >
              ×
            </button>
          </div>
        )
      })}
      <AddPlace
        name={t('write:setOne')}
        taken={Object.keys(set)}
        onAdd={(place) => onChange({ ...set, [place]: startOf(place) })}
      />
    </fieldset>
  )
}

/** A figure to begin with: the table's own, or its least. */
const startOf = (place: string): number => {
  const quantity = quantityOfPlace(place)
  if (quantity === null) return 0
  const { defaultValue, min } = quantityAt(quantity)
  return defaultValue ?? min
}

interface MoveFormProps {
  readonly move: readonly string[]
  readonly onChange: (move: string[]) => void
}

/** What the learner may move in a step. */
export const MoveForm = ({ move, onChange }: MoveFormProps) => {
  const t = useTexts()
  const nameOf = usePlaceNames()
  return (
    <fieldset className="write-places">
      <legend>{t('write:move')}</legend>
      {move.map((place) => (
        <div key={place} className="teach-row-form">
          <span>{nameOf(place)}</span>
          <button
            type="button"
            className="word"
            aria-label={t('write:removePlace', { name: nameOf(place) })}
            onClick={() => onChange(move.filter((each) => each !== place))}
          >
            ×
          </button>
        </div>
      ))}
      <AddPlace name={t('write:moveOne')} taken={move} onAdd={(place) => onChange([...move, place])} />
    </fieldset>
  )
}

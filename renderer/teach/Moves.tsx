import { quantityOfPlace, valueAt } from '../../geometry/lesson/state.ts'
import { quantityAt } from '../../geometry/quantities.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import type { StepProps } from './LessonRun.tsx'
import { move, putBack } from './teaching.ts'
import { usePlaceNames } from './usePlaceNames.ts'

/** What may be moved in a step: typed, or by the arrow keys, or by plus and minus. */
export const Moves = ({ step, state, teaching }: StepProps) => {
  const t = useTexts()
  const changed = Object.keys(teaching.moved).length > 0
  return (
    <fieldset className="teach-moves">
      <legend className="options-legend">{t('teach:moves')}</legend>
      {step.move.map((place) => (
        <Move key={place} place={place} value={valueAt(state, place)} />
      ))}
      {changed && (
        <button type="button" className="word" onClick={putBack}>
          {t('teach:putBack')}
        </button>
      )}
    </fieldset>
  )
}

/** A touch of the key: the last shown digit, or where there are two of them up to five, as the tenth part of what stands there allows. */
const stepOf = (decimals: number, value: number): number => {
  const last = 10 ** -decimals
  const digits = decimals >= 2 ? Math.round(Math.abs(value) / 10 / last) : 1
  return last * Math.min(5, Math.max(1, digits))
}

const Move = ({ place, value }: { readonly place: string; readonly value: number | null }) => {
  const t = useTexts()
  const name = usePlaceNames()(place)
  const quantity = quantityOfPlace(place)
  if (quantity === null) return null
  const { min, max, decimals } = quantityAt(quantity)
  const by = (steps: number) => {
    const now = value ?? min
    const next = now + steps * stepOf(decimals, now)
    move(place, Number(Math.min(max, Math.max(min, next)).toFixed(decimals + 1)))
  }
  return (
    <div className="teach-move">
      <FigureField
        quantity={quantity}
        label={name}
        value={value}
        onCommit={(typed) => typed !== null && move(place, typed)}
      />
      <span className="teach-steps">
        <button type="button" className="key" aria-label={t('teach:less', { name })} onClick={() => by(-1)}>
          −
        </button>
        <button type="button" className="key" aria-label={t('teach:more', { name })} onClick={() => by(1)}>
          +
        </button>
      </span>
    </div>
  )
}

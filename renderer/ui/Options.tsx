import { type ReactNode, useId, useState } from 'react'

interface OptionsProps<T extends string> {
  readonly legend: ReactNode
  readonly options: readonly { readonly value: T; readonly name: ReactNode }[]
  /** Null: none of them holds. */
  readonly value: T | null
  /** May take its time; the choice shows at once, and falls back if it was not taken. */
  readonly onChoose: (value: T) => unknown
  readonly hideLegend?: boolean
}

/** One of a few: the one that holds is a solid block. */
export const Options = <T extends string>({
  legend,
  options,
  value,
  onChoose,
  hideLegend = false,
}: OptionsProps<T>) => {
  const name = useId()
  const [chosen, setChosen] = useState<T | null>(null)
  const choose = async (next: T) => {
    setChosen(next)
    await onChoose(next)
    setChosen(null)
  }
  return (
    <fieldset>
      <legend className={hideLegend ? 'unseen' : 'options-legend'}>{legend}</legend>
      <div className="options">
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === (chosen ?? value)}
              onChange={() => void choose(option.value)}
            />
            {option.name}
          </label>
        ))}
      </div>
    </fieldset>
  )
}

import { type ReactNode, useId } from 'react'

interface OptionsProps<T extends string> {
  readonly legend: ReactNode
  readonly options: readonly { readonly value: T; readonly name: ReactNode }[]
  /** Null: none of them holds. */
  readonly value: T | null
  readonly onChoose: (value: T) => void
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
              checked={option.value === value}
              onChange={() => onChoose(option.value)}
            />
            {option.name}
          </label>
        ))}
      </div>
    </fieldset>
  )
}

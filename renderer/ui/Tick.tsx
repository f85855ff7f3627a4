import { type ReactNode, useState } from 'react'

interface TickProps {
  readonly name: ReactNode
  readonly checked: boolean
  /** May take its time; the tick shows at once, and falls back if it was not taken. */
  readonly onTick: (checked: boolean) => unknown
}

/** Something that holds or does not: a box to tick, with its words. */
export const Tick = ({ name, checked, onTick }: TickProps) => {
  const [chosen, setChosen] = useState<boolean | null>(null)
  const choose = async (next: boolean) => {
    setChosen(next)
    await onTick(next)
    setChosen(null)
  }
  return (
    <label className="tick">
      <input type="checkbox" checked={chosen ?? checked} onChange={(event) => void choose(event.target.checked)} />
      {name}
    </label>
  )
}

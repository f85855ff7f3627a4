import type { KeyboardEvent } from 'react'
import type { Job } from '../../../geometry/job.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useComparing } from './comparing.ts'

const turn = (turned: boolean): void => useComparing.setState({ turned })

const byKey = (turned: boolean) => (event: KeyboardEvent) => {
  if (event.key !== ' ' && event.key !== 'Enter') return
  event.preventDefault()
  turn(turned)
}

interface TurnKeyProps {
  readonly own: Job
  readonly other: Job
  readonly name: string
}

/** Shows the other one in the own one's place as long as it is held; only irons of one width fit one scale. */
export const TurnKey = ({ own, other, name }: TurnKeyProps) => {
  const t = useTexts()
  const turned = useComparing((comparing) => comparing.turned)
  if (own.blade.widthMm !== other.blade.widthMm) return null
  return (
    <button
      type="button"
      className="key compare-turn"
      aria-pressed={turned}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        turn(true)
      }}
      onPointerUp={() => turn(false)}
      onPointerCancel={() => turn(false)}
      onLostPointerCapture={() => turn(false)}
      onKeyDown={byKey(true)}
      onKeyUp={byKey(false)}
      onBlur={() => turn(false)}
      // A click without pointer or key is a reader's: it has nothing to hold, so it turns and turns back.
      onClick={(event) => event.detail === 0 && turn(!turned)}
    >
      {t('compare:turn', { name })}
    </button>
  )
}

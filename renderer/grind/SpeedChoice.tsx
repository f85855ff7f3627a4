import { GUESSED_SWEEP_SECONDS } from '../../geometry/removal.ts'
import { useTexts } from '../ui/texts.tsx'

/** As by hand (sweeps a second). */
const HAND = 1 / GUESSED_SWEEP_SECONDS

/** How fast a grind is played (sweeps a second): from one that can be followed step by step to one that shows where it ends. */
export const speeds = { eighth: HAND / 8, quarter: HAND / 4, normal: HAND, four: 4 * HAND, sixteen: 16 * HAND } as const
export type Speed = keyof typeof speeds

const inOrder = Object.keys(speeds) as Speed[]

/** @returns the next faster or slower speed; the same where there is none */
export const speedBeside = (speed: Speed, by: 1 | -1): Speed => inOrder[inOrder.indexOf(speed) + by] ?? speed

interface SpeedChoiceProps {
  readonly speed: Speed
  readonly onChoose: (speed: Speed) => void
}

/** The five speeds; at the middle one a sweep takes a second, about as long as a hand takes. */
export const SpeedChoice = ({ speed, onChoose }: SpeedChoiceProps) => {
  const t = useTexts()
  return (
    <label className="speed-choice">
      <span className="unseen">{t('grind:run.speed')}</span>
      <select className="word" value={speed} onChange={(event) => onChoose(event.target.value as Speed)}>
        {inOrder.map((each) => (
          <option key={each} value={each}>
            {t(`grind:speed.${each}`)}
          </option>
        ))}
      </select>
    </label>
  )
}

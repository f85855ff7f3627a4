import { useTexts } from '../ui/texts.tsx'

/** How fast a grind is played (sweeps a second): from one that can be followed step by step to one that shows where it ends. */
export const speeds = { eighth: 1 / 8, quarter: 1 / 4, normal: 1, four: 4, sixteen: 16 } as const
export type Speed = keyof typeof speeds

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
        {(Object.keys(speeds) as Speed[]).map((each) => (
          <option key={each} value={each}>
            {t(`grind:speed.${each}`)}
          </option>
        ))}
      </select>
    </label>
  )
}

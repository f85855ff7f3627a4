import type { ReactNode } from 'react'
import { useTexts } from '../ui/texts.tsx'
import './keys.css'

/** What a key shows, drawn in a square of 28. */
const icons = {
  play: <path className="solid" d="M8 5L23 14L8 23Z" />,
  pause: <path className="solid" d="M8 5h4v18h-4ZM17 5h4v18h-4Z" />,
  again: <path d="M8 9A9 9 0 1 1 5 15M8 3V9H14" />,
  stepBack: <path d="M8 6V22M23 6V22M18 14H12M12 14l3.5 -3.5M12 14l3.5 3.5" />,
  stepOn: <path d="M5 6V22M20 6V22M10 14H16M16 14l-3.5 -3.5M16 14l-3.5 3.5" />,
  back: <path d="M5 6V22M24 18C24 6 12 4 10 16M10 16l-3.5 -4M10 16l4.5 -3" />,
  on: <path d="M23 6V22M4 18C4 6 16 4 18 16M18 16l-4.5 -3M18 16l3.5 -4" />,
  lift: <path d="M8 20L20 8M5 25C10 21 18 21 23 25M10 13V3M10 3l-3 4M10 3l3 4" />,
  lower: <path d="M8 20L20 8M5 25C10 21 18 21 23 25M10 3V13M10 13l-3 -4M10 13l3 -4" />,
  view: <path d="M4 20L14 25L24 20V9L14 4L4 9ZM14 25V14M4 9L14 14L24 9" />,
} as const

interface KeyProps {
  readonly name: string
  readonly icon: keyof typeof icons
  readonly pressed?: boolean
  /** The one key that matters most: solid. */
  readonly main?: boolean
  readonly disabled?: boolean
  readonly onPress: () => void
}

const Key = ({ name, icon, pressed, main = false, disabled = false, onPress }: KeyProps) => (
  <button
    type="button"
    className="grind-key"
    aria-pressed={pressed}
    data-main={main}
    disabled={disabled}
    onClick={onPress}
  >
    <span className="grind-key-face" aria-hidden="true">
      <svg width={28} height={28} viewBox="0 0 28 28" aria-hidden="true">
        {icons[icon]}
      </svg>
    </span>
    <span className="grind-key-name">{name}</span>
  </button>
)

interface KeysProps {
  readonly playing: boolean
  readonly atStart: boolean
  readonly atEnd: boolean
  readonly lifted: boolean
  readonly onPlay: () => void
  readonly onPause: () => void
  /** To the next or the last whole sweep. */
  readonly onSweep: (by: 1 | -1) => void
  readonly onStep: (by: 1 | -1) => void
  readonly onAgain: () => void
  readonly onLift: (lifted: boolean) => void
  readonly onHome: () => void
}

/** The keys that hold time, and the two that turn the picture. */
export const Keys = (props: KeysProps): ReactNode => {
  const { playing, atStart, atEnd, lifted, onSweep, onStep } = props
  const t = useTexts()
  return (
    <div className="grind-keys as-it-lies">
      {playing ? (
        <Key name={t('grind:run.pause')} icon="pause" main onPress={props.onPause} />
      ) : (
        <Key name={t('grind:run.play')} icon="play" main onPress={props.onPlay} />
      )}
      <Key name={t('grind:run.back')} icon="back" disabled={atStart} onPress={() => onSweep(-1)} />
      <Key name={t('grind:run.stepBack')} icon="stepBack" disabled={atStart} onPress={() => onStep(-1)} />
      <Key name={t('grind:run.stepOn')} icon="stepOn" disabled={atEnd} onPress={() => onStep(1)} />
      <Key name={t('grind:run.on')} icon="on" disabled={atEnd} onPress={() => onSweep(1)} />
      <Key name={t('grind:run.again')} icon="again" onPress={props.onAgain} />
      <Key
        name={t(lifted ? 'grind:run.lower' : 'grind:run.lift')}
        icon={lifted ? 'lower' : 'lift'}
        pressed={lifted}
        onPress={() => props.onLift(!lifted)}
      />
      <Key name={t('grind:scene.homeKey')} icon="view" onPress={props.onHome} />
    </div>
  )
}

import { type ReactNode, useEffect, useRef } from 'react'
import { useTexts } from '../../ui/texts.tsx'
import { ViewHead } from '../Views.tsx'
import { setLarge, useViewing, type ViewName } from '../viewing.ts'
import { carryFocus, takeFocus } from './room.ts'

interface LinkedHeadProps {
  readonly view: ViewName
  /** How it is drawn: its factors. */
  readonly note: ReactNode
  readonly end?: ReactNode
}

/** Heading of a linked view, with its factor and the key that gives it the model's place. */
export const LinkedHead = ({ view, note, end }: LinkedHeadProps) => {
  const t = useTexts()
  return (
    <ViewHead heading={t(`views:name.${view}`)} note={note} end={end}>
      <LargeKey view={view} />
    </ViewHead>
  )
}

const LargeKey = ({ view }: { readonly view: ViewName }) => {
  const t = useTexts()
  const key = useRef<HTMLButtonElement>(null)
  const large = useViewing((viewing) => viewing.large === view)
  useEffect(() => {
    if (takeFocus(view)) key.current?.focus()
  }, [view])
  const word = t(large ? 'views:model' : 'views:large')
  const move = (): void => {
    carryFocus(view)
    setLarge(large ? null : view)
  }
  return (
    <button
      ref={key}
      type="button"
      className="word grind-view-key"
      aria-label={t('views:keyOf', { word, view: t(`views:name.${view}`) })}
      onClick={move}
    >
      {word}
    </button>
  )
}

import type { ReactNode } from 'react'
import { useTexts } from '../ui/texts.tsx'
import type { LabelSpec } from './placeLabels.ts'

interface PlainStageProps {
  readonly labels: readonly LabelSpec[]
  /** The graphics were there and stopped, and may be tried again. */
  readonly onAgain: (() => void) | null
  /** Flat drawings that stand for the model. */
  readonly children?: ReactNode
}

/** Where there is no picture: why, what is drawn flat instead, and the same figures and fields in a row. */
export const PlainStage = ({ labels, onAgain, children }: PlainStageProps) => {
  const t = useTexts()
  return (
    <div className="plain-stage">
      <p role="status">{t(onAgain ? 'scene:lost.said' : 'grind:scene.noPicture')}</p>
      {onAgain && (
        <button type="button" className="key" onClick={onAgain}>
          {t('scene:lost.again')}
        </button>
      )}
      {children}
      <div className="plain-labels">
        {labels.map(({ id, content }) => (
          <div key={id}>{content}</div>
        ))}
      </div>
    </div>
  )
}

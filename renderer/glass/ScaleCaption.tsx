import { plainly } from '../../main/contract/figures.ts'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { useTexts } from '../ui/texts.tsx'

interface ScaleCaptionProps {
  readonly heading: string
  readonly across: number
  readonly depth: number
}

const BAR_MOST_PX = 90
const BAR_ROOM_PX = 170

/** What a magnified drawing shows, and how many times life size it is across and in depth. */
export const ScaleCaption = ({ heading, across, depth }: ScaleCaptionProps) => {
  const t = useTexts()
  const scale = t('common:glass.scale', { across: plainly(across), depth: plainly(depth) })
  return (
    <figcaption>
      <strong>{heading}</strong> <span className="muted">{scale}</span>
      <svg className="drawing caption-bar" width={BAR_ROOM_PX} height="12" aria-hidden="true">
        <ScaleBar xPx={0} yPx={2} factor={across} mostPx={BAR_MOST_PX} />
      </svg>
    </figcaption>
  )
}

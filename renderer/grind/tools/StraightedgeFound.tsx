import type { SteelLine } from '../../../geometry/straightedge.ts'
import { fixed } from '../../../main/contract/figures.ts'
import { askewOf } from '../../measure/reading.ts'
import { problemSentence, useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { type StraightedgeReading, timesRelief } from './straightedgeReading.ts'
import { useToolbox } from './toolbox.ts'

interface FoundProps {
  readonly edge: SteelLine
  readonly reading: StraightedgeReading
  /** The grind stands still: what is found may be spoken. */
  readonly still: boolean
}

/** What the straightedge and its leaves say, in words. */
export const Found = ({ edge, reading, still }: FoundProps) => {
  const said = [useRocking(edge, reading), useShown(reading)].filter(Boolean).join(' ')
  return (
    <p className="tools-found" role="status" aria-live={still ? 'polite' : 'off'}>
      {said}
    </p>
  )
}

/** Pressed further than this it lies on that side (share of the way). */
const PRESSED = 0.999

const useRocking = (edge: SteelLine, { rocks, gapsMm }: StraightedgeReading): string => {
  const t = useTexts()
  const { inWords } = useFigures()
  const press = useToolbox((box) => box.press)
  if (!rocks) return t('tools:straightedge.still')
  if (Math.abs(press) < PRESSED) return t(press === 0 ? 'tools:straightedge.balanced' : 'tools:straightedge.between')
  const left = press < 0
  const times = timesRelief(edge, left ? -1 : 1)
  return t(left ? 'tools:straightedge.rockedLeft' : 'tools:straightedge.rockedRight', {
    gap: inWords(gapsMm[left ? 4 : 0] ?? 0, 'mm', 2),
    times: fixed(times ?? 1, 1),
  })
}

/** The leaves as a reading at the bench. */
const useShown = ({ shown }: StraightedgeReading): string => {
  const t = useTexts()
  const { inWords } = useFigures()
  const length = (mm: number) => inWords(mm, 'mm', 2)
  if (!shown.ok) return shown.problems.map((problem) => problemSentence(t, problem)).join(' ')
  const askew = askewOf(shown.value)
  if (askew) return t('tools:straightedge.askew', { least: length(askew[0]), most: length(askew[1]) })
  if (shown.value.reliefMm === 0) return t('tools:straightedge.straight')
  return t('tools:straightedge.relief', { relief: length(shown.value.reliefMm) })
}

import { MM_PER_THOU } from '../../geometry/units.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

/** Signed, as a change is written. */
const signed = (text: string): string => (text.startsWith('−') ? text : `+${text}`)

/** About a millimetre, for those who read inches. */
const FIFTY_THOU_MM = 50 * MM_PER_THOU

/** @returns what says how far a millimetre of something turns the bevel; the sentence has a place for the step and the change */
export const useTurns = (sentence: 'setUp:turns' | 'setUp:worn.turns') => {
  const t = useTexts()
  const { plain, inWords, lengthUnit } = useFigures()
  const stepMm = lengthUnit === 'mm' ? 1 : FIFTY_THOU_MM
  const step = inWords(stepMm, 'mm', 0)
  return (degPerMm: number): string => t(sentence, { step, change: signed(plain(degPerMm * stepMm, 'deg', 2).text) })
}

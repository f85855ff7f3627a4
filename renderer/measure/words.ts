import { ARC_RATIO, type EdgeShape, type MeasuredEdge } from '../../geometry/measure.ts'
import type { BenchLog } from '../../main/contract/entities.ts'
import { plainly, readBack } from '../../main/contract/figures.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { type Iron, readOfLine } from './read.ts'
import { askewOf, type Leaves } from './reading.ts'

/** A shape by its word: what is neither arc nor roof is flat in the middle, or hollow on its flanks. */
export type ShapeWord = Exclude<EdgeShape, 'neither'> | 'flat' | 'hollow' | 'unknown'

/** @returns the word for the shape of an edge */
export const shapeWordOf = ({ shape, halfwayMm, reliefMm }: MeasuredEdge): ShapeWord => {
  if (shape !== 'neither') return shape ?? 'unknown'
  return (halfwayMm ?? 0) < ARC_RATIO * reliefMm ? 'flat' : 'hollow'
}

/** Known to a twentieth a figure deserves three digits, else two. */
const WELL_KNOWN_SHARE = 0.05

/** @returns a figure with as many digits as it deserves, the others nought. @param errorShare its error as a share of it */
export const deservedText = (text: string, errorShare: number): string =>
  plainly(Number(readBack(text).toPrecision(errorShare > WELL_KNOWN_SHARE ? 2 : 3)))

/** @returns a writer for leaves: left, halfway where it was taken, right; `texts` is where the patterns stand */
export const useLeafWords = (): ((leaves: Leaves, texts: string, unit?: string) => string) => {
  const t = useTexts()
  const figures = useFigures()
  const leaf = (mm: number | null) => (mm === null ? '–' : figures.of('measure.leafMm', mm).text)
  return ({ leftMm, halfwayMm, rightMm }, texts, unit = '') => {
    const words = { left: leaf(leftMm), halfway: leaf(halfwayMm), right: leaf(rightMm), unit }
    return t(`${texts}.${halfwayMm === null ? 'corners' : 'leaves'}`, words)
  }
}

/** @returns a writer for what a line of the bench log showed; empty where it showed nothing */
export const useLineWords = (): ((line: BenchLog, iron: Iron) => string) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const length = (mm: number) => inWords(mm, 'mm', 2)
  const words = (edge: MeasuredEdge) => {
    const askew = askewOf(edge)
    if (askew) return t('measure:log.askew', { least: length(askew[0]), most: length(askew[1]) })
    const shape = shapeWordOf(edge)
    if (shape === 'straight') return t('measure:log.straight')
    const relief = length(edge.reliefMm)
    if (shape === 'unknown') return t('measure:log.alike', { relief })
    return t('measure:log.alikeShape', { relief, shape: t(`measure:shape.${shape}`) })
  }
  return (line, iron) => {
    const read = readOfLine(line, iron)
    if (read) return words(read.edge)
    return line.leafStepMm === null ? t('measure:log.stepUnknown') : ''
  }
}

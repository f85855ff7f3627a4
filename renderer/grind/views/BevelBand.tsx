import { useCallback } from 'react'
import { type Band, bandOf } from '../../../geometry/band.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { Frame, RunShape } from '../../worker/protocol.ts'
import { type Running, useReading } from '../useLiveGrind.ts'
import { useViewing } from '../viewing.ts'
import { nearestColumn } from './place.ts'
import { usePlaceName } from './usePlaceName.ts'

/** Nearer than this to edge or heel, a band is written as having reached it (mm): half of what is written. */
const REACHED_MM = 0.05

/** @returns the word for a band: from where to where it goes */
export const bandWord = (band: Band | null): 'none' | 'whole' | 'toEdge' | 'toHeel' | 'at' => {
  if (band === null) return 'none'
  const [edge, heel] = [band.fromEdgeMm < REACHED_MM, band.fromHeelMm < REACHED_MM]
  if (edge) return heel ? 'whole' : 'toEdge'
  return heel ? 'toHeel' : 'at'
}

/** How far the ground band is from edge and heel, at the place marked or in the middle. */
export const BevelBand = ({ running }: { readonly running: Running }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const placeName = usePlaceName()
  const uMm = useViewing((viewing) => viewing.markedUMm) ?? 0
  const read = useCallback(
    (frame: Frame, shape: RunShape) => bandOf({ ...shape, vMm: frame.vMm }, nearestColumn(shape.uMm, uMm)),
    [uMm],
  )
  const band = useReading(running, read)
  const figures = band && { edge: inWords(band.fromEdgeMm, 'mm', 1), heel: inWords(band.fromHeelMm, 'mm', 1) }
  return (
    <p className="grind-view-line" data-testid="bevel-band">
      {t('views:bevel.line', { place: placeName(uMm), band: t(`views:bevel.${bandWord(band)}`, { ...figures }) })}
    </p>
  )
}

/** What the bevel shows besides ink. */
export const BevelLegend = () => {
  const t = useTexts()
  return (['ground', 'touch'] as const).map((each) => (
    <span key={each} className="corner-name">
      <span className="bevel-key" data-key={each} aria-hidden="true" />
      {t(`views:bevel.${each}`)}
    </span>
  ))
}

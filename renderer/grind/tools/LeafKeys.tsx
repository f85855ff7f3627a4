import { quantities } from '../../../geometry/quantities.ts'
import { FigureField } from '../../ui/FigureField.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { StraightedgeReading } from './straightedgeReading.ts'
import { useToolbox } from './toolbox.ts'
import { usePlaceWords } from './usePlaceWords.ts'

interface LeafKeysProps {
  /** From one leaf of the set to the next. */
  readonly stepMm: number
  readonly reading: StraightedgeReading
  readonly widthMm: number
}

/** Finer than leaves are made, so that a gap is told from a leaf as thick. */
const GAP_DECIMALS = 3
const { max } = quantities.measure.leafMm

/** The leaf of the set next to one, which need not be of the set. @param by 1 thicker, -1 thinner */
const nextLeafMm = (leafMm: number, stepMm: number, by: 1 | -1): number => {
  const place = leafMm / stepMm
  const next = by > 0 ? Math.floor(place + 1e-6) + 1 : Math.ceil(place - 1e-6) - 1
  return Math.min(Math.max(next, 1), Math.floor(max / stepMm)) * stepMm
}

/** The leaf in hand: typed, or the next thinner or thicker of the set. */
export const LeafKeys = ({ stepMm, reading, widthMm }: LeafKeysProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { leafMm, leafShare } = useToolbox()
  const where = {
    place: usePlaceWords(widthMm)((leafShare * widthMm) / 2),
    gap: inWords(reading.gapMm, 'mm', GAP_DECIMALS),
  }
  const take = (by: 1 | -1) => useToolbox.setState({ leafMm: nextLeafMm(leafMm, stepMm, by) })
  return (
    <>
      <div className="tools-leaf">
        <FigureField
          quantity="measure.leafMm"
          label={t('tools:straightedge.leaf')}
          size="small"
          value={leafMm}
          range={{ min: 0.001, max }}
          onCommit={(value) => useToolbox.setState({ leafMm: value ?? leafMm })}
        />
        <button type="button" className="word" onClick={() => take(-1)}>
          {t('tools:straightedge.thinner')}
        </button>
        <button type="button" className="word" onClick={() => take(1)}>
          {t('tools:straightedge.thicker')}
        </button>
      </div>
      <p>{t(reading.goesUnder ? 'tools:straightedge.under' : 'tools:straightedge.notUnder', where)}</p>
    </>
  )
}

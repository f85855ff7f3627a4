import { quantities } from '../../../geometry/quantities.ts'
import { AXIS_MM } from '../../scene/placement.ts'
import { gripAlong } from './axis.ts'
import { withOffset } from './held.ts'
import { type HandleFacts, type HandleKind, rangeWithin } from './kind.ts'

/** The bar's offset goes in whole millimetres, as a rule laid level reads it. */
const OFFSET_SNAP_MM = 1

/** The bar's other end, at a station whose bar stands to one side: shifted towards the operator or away; distance and bevel stay. */
export const barOffsetHandle = ({ t, figures, job }: HandleFacts): HandleKind => {
  const value = job.station.barOffsetMm
  const range = rangeWithin(quantities.station.barOffsetMm, OFFSET_SNAP_MM, value, (mm) => withOffset(job, mm))
  return {
    id: 'barOffset',
    anchors: ['barRight'],
    name: t('quantities:station.barOffsetMm.name'),
    hint: t('handles:hint.barOffset'),
    cursor: 'move',
    path: 'station.barOffsetMm',
    value,
    range,
    caution: 'setUp',
    grip: gripAlong('barRight', 'barForward', AXIS_MM, value, range),
    change: withOffset,
    tell: (mm) => ({ value: figures.inWords(mm, 'mm', 0) }),
  }
}

import { quantities } from '../../../geometry/quantities.ts'
import { measureOf } from '../../../main/contract/barMeasure.ts'
import { AXIS_MM } from '../../scene/placement.ts'
import { gripAlong } from './axis.ts'
import { bevelInWords, withBar } from './held.ts'
import { type HandleFacts, type HandleKind, rangeWithin } from './kind.ts'

/** The bar goes in tenths of a millimetre, as a caliper reads it: one turns the bevel by some hundredths of a degree. */
const BAR_SNAP_MM = 0.1

/** The rest bar: lifted or lowered, the projection stays and the bevel follows. Its value is what the station's way of measuring reads. */
export const barHandle = ({ t, figures, job, setUp, station }: HandleFacts): HandleKind => {
  const measure = station?.barMeasure ?? 'gap'
  const place = station?.barPlace ?? 'above'
  const value = measureOf(measure, job.station, setUp.barDistanceMm)
  const { max } = quantities.aim.barDistanceMm
  const typed = { min: 0, max: measureOf(measure, job.station, max) }
  const range = rangeWithin(typed, BAR_SNAP_MM, value, (readMm) => withBar(job, measure, readMm))
  return {
    id: 'bar',
    anchors: ['barLeft'],
    name: t(`setUp:bar.given.${place}.${measure}`),
    hint: t('handles:hint.bar'),
    cursor: 'ns-resize',
    path: 'aim.barDistanceMm',
    value,
    range,
    typed,
    caution: 'setUp',
    grip: gripAlong('barLeft', 'barRise', AXIS_MM, value, range),
    change: (now, readMm) => withBar(now, measure, readMm),
    tell: (readMm, now) => ({ value: figures.inWords(readMm, 'mm', 1), follows: bevelInWords(now, t, figures) }),
  }
}

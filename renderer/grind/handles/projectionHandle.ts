import { quantities } from '../../../geometry/quantities.ts'
import { gripAlong } from './axis.ts'
import { bevelInWords, withProjection } from './held.ts'
import { type HandleFacts, type HandleKind, rangeWithin } from './kind.ts'

/** The projection goes in half millimetres, as a stop block or a rule gives it. */
const PROJECTION_SNAP_MM = 0.5

/** The blade in its clamp: slid out along its length, the bar stays and the bevel follows. */
export const projectionHandle = ({ t, figures, job, setUp }: HandleFacts): HandleKind => {
  const value = setUp.projectionMm
  const limits = quantities.aim.projectionMm
  const range = rangeWithin(limits, PROJECTION_SNAP_MM, value, (mm) => withProjection(job, mm))
  return {
    id: 'projection',
    anchors: ['projectionTop', 'projectionEdge'],
    name: t('quantities:aim.projectionMm.name'),
    hint: t('handles:hint.projection'),
    cursor: 'nwse-resize',
    path: 'aim.projectionMm',
    value,
    range,
    caution: 'setUp',
    grip: gripAlong('projectionTop', 'projectionEdge', value, value, range),
    change: withProjection,
    tell: (mm, now) => ({ value: figures.inWords(mm, 'mm', 1), follows: bevelInWords(now, t, figures) }),
  }
}

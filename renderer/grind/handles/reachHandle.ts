import type { Job } from '../../../geometry/job.ts'
import { quantities } from '../../../geometry/quantities.ts'
import { alongMm, axisOf } from './axis.ts'
import type { HandleFacts, HandleKind } from './kind.ts'
import { snapped } from './range.ts'

/** The reach goes in half millimetres, finer than a finger is put down. */
const REACH_SNAP_MM = 0.5

const withReach = (job: Job, fingerReachMm: number): Job => ({ ...job, motion: { ...job.motion, fingerReachMm } })

/** The load's arrow: dragged outwards the fingers reach further; outwards is away from the middle on the load's side. */
export const reachHandle = ({ t, figures, job }: HandleFacts): HandleKind => {
  const value = job.motion.fingerReachMm
  const { min, max } = quantities.motion.fingerReachMm
  const range = { min, max, snap: REACH_SNAP_MM }
  return {
    id: 'reach',
    anchors: ['loadTail'],
    name: t('quantities:motion.fingerReachMm.name'),
    hint: t('handles:hint.reach'),
    cursor: 'col-resize',
    path: 'motion.fingerReachMm',
    value,
    range,
    caution: null,
    grip: (project, loadPlaceMm) => {
      const outwards = loadPlaceMm < 0 ? -1 : 1
      const axis = axisOf(project, 'edgeLeft', 'edgeRight', job.blade.widthMm)
      return (dxPx, dyPx) => snapped(value + outwards * alongMm(axis, dxPx, dyPx), range)
    },
    change: withReach,
    tell: (mm) => ({ value: figures.inWords(mm, 'mm', 1) }),
  }
}

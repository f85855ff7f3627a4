import type { Job } from '../../geometry/job.ts'
import type { SetUp } from '../../geometry/setUp.ts'
import { THUMB_MM } from './fingers.ts'
import { STOP_LEVEL_MM, screwPlaceMm } from './fixture.ts'
import type { Stops } from './machine.ts'
import { AXIS_MM, barAxisMm, barReachMm, type MachineFigures } from './placement.ts'

/** Points of the machine that labels and handles hang on. */
export type AnchorName =
  | 'stopLeft'
  | 'stopRight'
  | 'pivot'
  | 'barEnd'
  | 'barLeft'
  | 'barRise'
  | 'barRight'
  | 'barForward'
  | 'barUnder'
  | 'wheelTop'
  | 'wheelSide'
  | 'projectionTop'
  | 'projectionEdge'
  | 'bevel'
  | 'edgeLeft'
  | 'edgeRight'
  | 'load'
  | 'loadTail'
  | 'dotCorner'
  | 'ink'

/** A point in one of the machine's frames (mm). */
type LocalPoint = readonly [frame: 'scene' | 'base' | 'blade', x: number, y: number, z: number]

/** Every point of a set-up, for the stops as they stand. */
export const anchorPoints = (job: Job, setUp: SetUp, figures: MachineFigures, dot: 'left' | 'right') => {
  const { wheelRadiusMm: R, barRadiusMm: rb } = setUp
  const { projectionMm: P, pivotUMm, pivotVMm } = figures
  const [barY, barZ] = barAxisMm(figures)
  const half = job.blade.widthMm / 2
  const wheelHalf = job.station.wheelWidthMm / 2
  const inkN = job.blade.thicknessMm * 0.85
  const inkV = inkN / Math.tan(setUp.bevelRad)
  const gapX = -Math.max(wheelHalf, half + 18) - 4
  return (stops: Stops): Record<AnchorName, LocalPoint> => {
    const guideVMm = pivotVMm + (job.fixture.guideArmMm ?? 0)
    const head = (side: 'left' | 'right', playMm: number): LocalPoint => [
      'base',
      screwPlaceMm(side, pivotUMm, playMm).headMm,
      guideVMm,
      STOP_LEVEL_MM,
    ]
    return {
      stopLeft: head('left', stops.leftMm),
      stopRight: head('right', stops.rightMm),
      pivot: ['blade', pivotUMm, pivotVMm, 8.6],
      barEnd: ['scene', -barReachMm(job), barY, barZ],
      barLeft: ['scene', gapX - 14, barY, barZ],
      barRise: ['scene', gapX - 14, barY + AXIS_MM, barZ],
      barRight: ['scene', 10 - gapX, barY, barZ],
      barForward: ['scene', 10 - gapX, barY, barZ + AXIS_MM],
      barUnder: ['scene', gapX, barY - rb, barZ],
      wheelTop: ['scene', gapX, R, 0],
      wheelSide: ['scene', -wheelHalf, R * 0.62, -R * 0.74],
      projectionTop: ['blade', -half - 3, P, 0],
      projectionEdge: ['blade', -half - 3, 0, 0],
      bevel: ['blade', half, 4, -1],
      edgeLeft: ['blade', -half, 0, 0],
      edgeRight: ['blade', half, 0, 0],
      load: ['blade', 0, THUMB_MM, 0.4],
      loadTail: ['blade', 0, THUMB_MM + 2, 30],
      dotCorner: ['blade', dot === 'left' ? -half : half, 1, 0],
      ink: ['blade', -half * 0.45, inkV, -inkN],
    }
  }
}

/** Points that go across with the load. */
export const goesWithLoad = (name: AnchorName): boolean => name === 'load' || name === 'loadTail'

import { Group, type Object3D, type Vector3 } from 'three'
import type { Job } from '../../geometry/job.ts'
import type { SetUp } from '../../geometry/setUp.ts'
import type { Frame, RunShape } from '../worker/protocol.ts'
import { buildBlade } from './blade.ts'
import { disposePart } from './disposal.ts'
import { moveParts, type SetUpDraft } from './draft.ts'
import { buildFixture, STOP_LEVEL_MM, screwPlaceMm } from './fixture.ts'
import type { SceneMaterials } from './materials.ts'
import {
  AXIS_MM,
  barAxisMm,
  type MachineFigures,
  machineFigures,
  placeBase,
  placeBladeOnBase,
  type StanceMm,
  setUpTiltRad,
} from './placement.ts'
import { fullPressureNPerMm } from './pressure.ts'
import { buildBar, buildTurnArrow, buildWheel, type Rotation, turningSense } from './wheel.ts'

/** Free play on each side as drawn, which during a drag is not yet the job's. */
export interface Stops {
  readonly leftMm: number
  readonly rightMm: number
  readonly leftTurns: number
  readonly rightTurns: number
}

/** Points of the machine that labels and handles hang on. */
export type AnchorName =
  | 'stopLeft'
  | 'stopRight'
  | 'pivot'
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

/** The whole drawn machine of one run. */
export interface Machine {
  readonly root: Group
  readonly figures: MachineFigures
  /** Moves everything to a frame. @param liftRad turn of blade and fixture about the bar, away from the wheel */
  show(frame: Frame, liftRad: number): void
  setStops(stops: Stops): void
  /** Shows another set-up of the same blade and fixture; null: the run's own. */
  setDraft(draft: SetUpDraft | null): void
  /** @param seconds how long the wheel has run on */
  turnWheel(seconds: number): void
  /** Where a point stands in the scene, at the frame last shown; a number: a place on the edge (mm, + right). @param out filled and returned */
  anchor(name: AnchorName | number, out: Vector3): Vector3
  dispose(): void
}

interface Surroundings {
  readonly rotation: Rotation
  readonly dot: 'left' | 'right'
  readonly inkColour: string
}

type LocalPoint = readonly [frame: 'scene' | 'base' | 'blade', x: number, y: number, z: number]

const onEdge = (uMm: number): LocalPoint => ['blade', uMm, 0, 0]

const anchorPoints = (job: Job, setUp: SetUp, figures: MachineFigures, dot: 'left' | 'right') => {
  const { wheelRadiusMm: R, barRadiusMm: rb } = setUp
  const { projectionMm: P, pivotUMm, pivotVMm } = figures
  const [barY, barZ] = barAxisMm(figures)
  const half = job.blade.widthMm / 2
  const wheelHalf = job.station.wheelWidthMm / 2
  const inkN = job.blade.thicknessMm * 0.85
  const inkV = inkN / Math.tan(setUp.bevelRad)
  const gapX = -Math.max(wheelHalf, half + 18) - 4
  return (stops: Stops, loadPlaceMm: number): Record<AnchorName, LocalPoint> => {
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
      load: ['blade', loadPlaceMm, 13, 0.4],
      loadTail: ['blade', loadPlaceMm, 15, 30],
      dotCorner: ['blade', dot === 'left' ? -half : half, 1, 0],
      ink: ['blade', -half * 0.45, inkV, -inkN],
    }
  }
}

/** Draws every part of a run's machine. */
export const buildMachine = (
  job: Job,
  setUp: SetUp,
  shape: RunShape,
  { rotation, dot, inkColour }: Surroundings,
  materials: SceneMaterials,
): Machine => {
  const figures = machineFigures(job, setUp)
  const base = new Group()
  const blade = new Group()
  for (const group of [base, blade]) group.matrixAutoUpdate = false
  const wheel = buildWheel(job, materials)
  const fixture = buildFixture(job, setUp, figures, materials)
  const iron = buildBlade(job, figures, shape, dot, inkColour, materials)
  blade.add(iron.group, fixture.moving)
  base.add(fixture.fixed, blade)
  const root = new Group()
  const bar = buildBar(job, barAxisMm(figures), materials)
  root.add(wheel, buildTurnArrow(job, rotation, materials), bar, base)

  let drawn = { figures, moreTiltRad: 0, pointsAt: anchorPoints(job, setUp, figures, dot) }
  const fullPressure = fullPressureNPerMm(job)
  const turnsPerSecond = job.station.wheelSpeedRpm / 60
  const out = new Float64Array(16)
  const stance = { tiltRad: 0, yawRad: 0, traverseMm: 0 }
  let stops: Stops = { leftMm: 0, rightMm: 0, leftTurns: 0, rightTurns: 0 }
  let loadMm = 0
  const setMatrix = (part: Object3D): void => {
    part.matrix.fromArray(out as unknown as number[])
    part.matrixWorldNeedsUpdate = true
  }
  const pose = (next: StanceMm): void => {
    placeBase(drawn.figures, next, out)
    setMatrix(base)
    placeBladeOnBase(drawn.figures, next.yawRad, out)
    setMatrix(blade)
  }
  return {
    root,
    figures,
    show: (frame, liftRad) => {
      stance.tiltRad = frame.tiltRad + drawn.moreTiltRad + liftRad
      stance.yawRad = frame.yawRad
      stance.traverseMm = frame.traverseMm
      loadMm = frame.loadPlaceMm
      pose(stance)
      iron.show(frame, fullPressure)
    },
    setStops: (next) => {
      stops = next
      fixture.setStop('left', next.leftMm, next.leftTurns)
      fixture.setStop('right', next.rightMm, next.rightTurns)
    },
    setDraft: (draft) => {
      const shown = draft ?? { job, setUp }
      const figuresNow = machineFigures(shown.job, shown.setUp)
      drawn = {
        figures: figuresNow,
        moreTiltRad: setUpTiltRad(shown.setUp) - setUpTiltRad(setUp),
        pointsAt: anchorPoints(shown.job, shown.setUp, figuresNow, dot),
      }
      moveParts({ bar, fixture: [fixture.fixed, fixture.moving] }, figures, figuresNow)
    },
    turnWheel: (seconds) => {
      wheel.rotation.x = (turningSense(rotation) * 2 * Math.PI * turnsPerSecond * seconds) % (2 * Math.PI)
    },
    anchor: (name, point) => {
      const [frameName, x, y, z] = typeof name === 'number' ? onEdge(name) : drawn.pointsAt(stops, loadMm)[name]
      point.set(x, y, z)
      if (frameName === 'blade') point.applyMatrix4(blade.matrix)
      return frameName === 'scene' ? point : point.applyMatrix4(base.matrix)
    },
    dispose: () => disposePart(root),
  }
}

import { Group, type Object3D, Vector3 } from 'three'
import type { Job } from '../../geometry/job.ts'
import type { SetUp } from '../../geometry/setUp.ts'
import type { Frame, RunShape } from '../worker/protocol.ts'
import { type AnchorName, anchorPoints, goesWithLoad } from './anchors.ts'
import { buildBlade } from './blade.ts'
import { disposePart } from './disposal.ts'
import { moveParts, type SetUpDraft } from './draft.ts'
import { buildFingers } from './fingers.ts'
import { buildFixture } from './fixture.ts'
import { type HiddenParts, type PartName, partNames } from './layers.ts'
import { buildMarks } from './marks.ts'
import type { SceneMaterials } from './materials.ts'
import { outline } from './outlines.ts'
import {
  barAxisMm,
  type MachineFigures,
  machineFigures,
  placeBase,
  placeBladeOnBase,
  type StanceMm,
  setUpTiltRad,
} from './placement.ts'
import { fullPressureNPerMm } from './pressure.ts'
import { buildRimMarks } from './rimMarks.ts'
import { buildBar, buildTurnArrow, buildWheel, type Rotation, turningSense } from './wheel.ts'

/** Free play on each side as drawn, which during a drag is not yet the job's. */
export interface Stops {
  readonly leftMm: number
  readonly rightMm: number
  readonly leftTurns: number
  readonly rightTurns: number
}

/** The whole drawn machine of one run. */
export interface Machine {
  readonly root: Group
  readonly figures: MachineFigures
  /** Moves everything to a frame. @param liftRad turn of blade and fixture about the bar, away from the wheel */
  show(frame: Frame, liftRad: number): void
  setStops(stops: Stops): void
  /** @param seconds how long the wheel has run on */
  turnWheel(seconds: number): void
  /** Shows another set-up of the same blade and fixture; null: the run's own. */
  setDraft(draft: SetUpDraft | null): void
  /** Where a point stands in the scene, at the frame last shown; a number: a place on the edge (mm, + right). @param out filled and returned */
  anchor(name: AnchorName | number, out: Vector3): Vector3
  hideParts(hidden: HiddenParts): void
  /** Names of the parts that are there to be seen. */
  shownParts(): readonly PartName[]
  dispose(): void
}

interface Surroundings {
  readonly rotation: Rotation
  readonly dot: 'left' | 'right'
  /** The wheel runs in water. */
  readonly wet: boolean
  /** Lines on white. */
  readonly print: boolean
}

/** Draws every part of a run's machine. */
export const buildMachine = (
  job: Job,
  setUp: SetUp,
  shape: RunShape,
  { rotation, dot, wet, print }: Surroundings,
  materials: SceneMaterials,
): Machine => {
  const figures = machineFigures(job, setUp)
  const base = new Group()
  const blade = new Group()
  for (const group of [base, blade]) group.matrixAutoUpdate = false
  const wheel = buildWheel(job, materials)
  const arrow = buildTurnArrow(job, rotation, materials)
  const rim = buildRimMarks(job, wet && !print, materials)
  const bar = buildBar(job, barAxisMm(figures), materials)
  const fixture = buildFixture(job, setUp, figures, materials)
  const iron = buildBlade(job, figures, shape, materials)
  const marks = buildMarks(job, shape, dot, materials)
  const fingers = buildFingers(materials)
  blade.add(iron.group, marks.group, fingers, fixture.moving)
  base.add(fixture.fixed, blade)
  const root = new Group()
  root.add(wheel, arrow, rim.sheen, rim.shadow, bar, base)
  const parts: Readonly<Record<PartName, readonly Object3D[]>> = {
    wheel: [wheel, arrow, rim.sheen],
    fixture: [fixture.fixed, fixture.moving],
    bar: [bar],
    blade: [iron.group],
    marks: [marks.group],
    fingers: [fingers],
    shadow: [rim.shadow],
  }
  const solid = [wheel, bar, fixture.fixed, fixture.moving, iron.group, fingers]
  const lines = print ? outline(solid, iron.tip, shape) : null

  const fullPressure = fullPressureNPerMm(job)
  const turnsPerSecond = job.station.wheelSpeedRpm / 60
  const edge = new Vector3()
  const out = new Float64Array(16)
  const stance = { tiltRad: 0, yawRad: 0, traverseMm: 0 }
  let stops: Stops = { leftMm: 0, rightMm: 0, leftTurns: 0, rightTurns: 0 }
  let drawn = { figures, moreTiltRad: 0, pointsAt: anchorPoints(job, setUp, figures, dot) }
  let points = drawn.pointsAt(stops)
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
  const placeOnRim = (liftRad: number): void => {
    edge.set(0, 0, 0).applyMatrix4(blade.matrix).applyMatrix4(base.matrix)
    rim.show(Math.atan2(edge.y, edge.z), edge.x, liftRad)
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
      iron.show(frame)
      lines?.follow()
      marks.show(frame, fullPressure)
      fingers.position.x = loadMm
      placeOnRim(liftRad)
    },
    setStops: (next) => {
      stops = next
      points = drawn.pointsAt(stops)
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
      points = drawn.pointsAt(stops)
      moveParts({ bar, fixture: [fixture.fixed, fixture.moving] }, figures, figuresNow)
    },
    turnWheel: (seconds) => {
      wheel.rotation.x = (turningSense(rotation) * 2 * Math.PI * turnsPerSecond * seconds) % (2 * Math.PI)
    },
    anchor: (name, point) => {
      // Asked for every line of every picture: no pair is taken apart and none is made.
      const place = typeof name === 'number' ? null : points[name]
      if (place === null) point.set(name as number, 0, 0)
      else point.set(goesWithLoad(name as AnchorName) ? loadMm : place[1], place[2], place[3])
      if (place === null || place[0] === 'blade') point.applyMatrix4(blade.matrix)
      return place !== null && place[0] === 'scene' ? point : point.applyMatrix4(base.matrix)
    },
    hideParts: (hidden) => {
      for (const name of partNames) for (const part of parts[name]) part.visible = !hidden[name]
      // What only the blade or the wheel carries goes with it.
      marks.group.visible &&= !hidden.blade
      fingers.visible &&= !hidden.blade
      rim.shadow.visible = !print && !(hidden.shadow || hidden.blade || hidden.wheel)
    },
    shownParts: () => partNames.filter((name) => parts[name].some((part) => part.visible)),
    dispose: () => {
      disposePart(root)
      iron.dispose()
      lines?.dispose()
    },
  }
}

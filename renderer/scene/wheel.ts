import { CylinderGeometry, Group, Mesh, RingGeometry, Shape, ShapeGeometry } from 'three'
import type { Job } from '../../geometry/job.ts'
import type { SceneMaterials } from './materials.ts'
import { barReachMm } from './placement.ts'
import { block, rod } from './solids.ts'

/** Which way the rim runs where the edge touches it. */
export type Rotation = 'intoEdge' | 'awayFromEdge'

/** Facets round the rim: the worst leaves the true circle by R (1 - cos(pi/n)), a twentieth of a millimetre at R 125. */
const RIM_FACETS = 120
/** Share of the radius that the flange covers. */
const FLANGE_SHARE = 0.22

const onSide = (geometry: RingGeometry | ShapeGeometry, xMm: number): RingGeometry | ShapeGeometry => {
  geometry.rotateY(xMm < 0 ? -Math.PI / 2 : Math.PI / 2)
  geometry.translate(xMm, 0, 0)
  return geometry
}

/** Place in the order of drawing: before what is painted on it. */
const FIRST = -9

/** The wheel, axis along x, true in diameter and width. It is turned by its `rotation.x`. */
export const buildWheel = ({ station }: Job, materials: SceneMaterials): Group => {
  const radiusMm = station.wheelDiameterMm / 2
  const halfMm = station.wheelWidthMm / 2
  const rim = new CylinderGeometry(radiusMm, radiusMm, 2 * halfMm, RIM_FACETS, 1, true)
  rim.rotateZ(-Math.PI / 2)
  const flangeMm = FLANGE_SHARE * radiusMm
  const wheel = new Group()
  wheel.add(new Mesh(rim, materials.rim))
  for (const xMm of [-halfMm, halfMm]) {
    wheel.add(new Mesh(onSide(new RingGeometry(flangeMm, radiusMm, RIM_FACETS), xMm), materials.side))
  }
  wheel.add(rod([-halfMm - 3, halfMm + 3], flangeMm, [0, 0], materials.bore, 48))
  wheel.add(rod([-halfMm - 14, halfMm + 14], flangeMm * 0.3, [0, 0], materials.screw, 24))
  for (const child of wheel.children) {
    child.receiveShadow = true
    child.renderOrder = FIRST
  }
  return wheel
}

/** Sense of turning about +x. At the edge the rim lies towards the operator; into the edge it comes up there. */
export const turningSense = (rotation: Rotation): 1 | -1 => (rotation === 'intoEdge' ? -1 : 1)

/** Angles, about x from towards the operator upwards, between which the arrow lies. */
const ARROW_RAD = [0.5, 1.35] as const

/** The arrow on the wheel's left side that says which way it turns; it does not turn itself. */
export const buildTurnArrow = ({ station }: Job, rotation: Rotation, materials: SceneMaterials): Mesh => {
  const radiusMm = (station.wheelDiameterMm / 2) * 0.78
  const thickMm = radiusMm * 0.012
  const headMm = radiusMm * 0.075
  const [low, high] = ARROW_RAD
  const [from, to] = rotation === 'intoEdge' ? [low, high] : [high, low]
  const at = (rad: number, r: number): [number, number] => [r * Math.cos(rad), r * Math.sin(rad)]
  const shape = new Shape()
  const clockwise = to < from
  shape.moveTo(...at(from, radiusMm - thickMm))
  shape.absarc(0, 0, radiusMm - thickMm, from, to, clockwise)
  shape.lineTo(...at(to, radiusMm - headMm))
  shape.lineTo(...at(to + (to - from) * 0.16, radiusMm))
  shape.lineTo(...at(to, radiusMm + headMm))
  shape.lineTo(...at(to, radiusMm + thickMm))
  shape.absarc(0, 0, radiusMm + thickMm, to, from, !clockwise)
  shape.closePath()
  return new Mesh(onSide(new ShapeGeometry(shape, 24), -station.wheelWidthMm / 2 - 0.4), materials.arrow)
}

/** The rest bar, parallel to the wheel's axis, on a plain mount at its right end. */
export const buildBar = (job: Job, [y, z]: readonly [number, number], materials: SceneMaterials): Group => {
  const radiusMm = job.station.barDiameterMm / 2
  const reachMm = barReachMm(job)
  const bar = new Group()
  bar.add(rod([-reachMm, reachMm], radiusMm, [y, z], materials.bar))
  const deepMm = radiusMm + 5
  bar.add(rod([reachMm - 18, reachMm - 15.5], radiusMm + 2.5, [y, z], materials.fixed))
  bar.add(block({ x: [reachMm - 16, reachMm], y: [-y, y + deepMm], z: [z - deepMm, z + deepMm] }, materials.fixed))
  return bar
}

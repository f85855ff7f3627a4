import {
  BoxGeometry,
  type BufferGeometry,
  CylinderGeometry,
  ExtrudeGeometry,
  type Material,
  Mesh,
  Path,
  Shape,
} from 'three'

/** Edges of plain parts are broken by this (mm), so that they catch the light. */
const CHAMFER_MM = 0.45

const shadowed = (geometry: BufferGeometry, material: Material): Mesh => {
  const mesh = new Mesh(geometry, material)
  mesh.castShadow = true
  mesh.receiveShadow = true
  return mesh
}

/** From..to on each axis, in the part's frame (mm). */
export interface BoxMm {
  readonly x: readonly [number, number]
  readonly y: readonly [number, number]
  readonly z: readonly [number, number]
}

/** The plain box, its edges sharp. */
export const boxOf = ({ x, y, z }: BoxMm): BoxGeometry => {
  const box = new BoxGeometry(x[1] - x[0], y[1] - y[0], z[1] - z[0])
  box.translate((x[0] + x[1]) / 2, (y[0] + y[1]) / 2, (z[0] + z[1]) / 2)
  return box
}

/** A block with broken edges; `userData.boxMm` is the box it was. */
export const block = (boxMm: BoxMm, material: Material): Mesh => {
  const { x, y, z } = boxMm
  const c = CHAMFER_MM
  const shape = new Shape()
  shape.moveTo(x[0] + c, y[0] + c)
  shape.lineTo(x[1] - c, y[0] + c)
  shape.lineTo(x[1] - c, y[1] - c)
  shape.lineTo(x[0] + c, y[1] - c)
  shape.closePath()
  const geometry = new ExtrudeGeometry(shape, {
    depth: Math.max(z[1] - z[0] - 2 * c, 0.1),
    bevelThickness: c,
    bevelSize: c,
    bevelSegments: 1,
  })
  geometry.translate(0, 0, z[0] + c)
  const mesh = shadowed(geometry, material)
  mesh.userData.boxMm = boxMm
  return mesh
}

/** A round part along x. @param sides 6 for a screw's head */
export const rod = (
  [from, to]: readonly [number, number],
  radiusMm: number,
  [y, z]: readonly [number, number],
  material: Material,
  sides = 32,
): Mesh => {
  const geometry = new CylinderGeometry(radiusMm, radiusMm, to - from, sides)
  geometry.rotateZ(-Math.PI / 2)
  const mesh = shadowed(geometry, material)
  mesh.position.set((from + to) / 2, y, z)
  return mesh
}

/** A round part along z, standing on the back. */
export const pin = (
  [x, y]: readonly [number, number],
  radiusMm: number,
  [from, to]: readonly [number, number],
  material: Material,
  sides = 32,
): Mesh => {
  const geometry = new CylinderGeometry(radiusMm, radiusMm, to - from, sides)
  geometry.rotateX(Math.PI / 2)
  const mesh = shadowed(geometry, material)
  mesh.position.set(x, y, (from + to) / 2)
  return mesh
}

/** A flat plate between two v, its upper corners cut off, with a slot if there is room for one. */
export const plate = (
  { x, y, z }: BoxMm,
  cutMm: number,
  slot: { readonly y: readonly [number, number]; readonly radiusMm: number } | null,
  material: Material,
): Mesh => {
  const shape = new Shape()
  shape.moveTo(x[0], y[0])
  shape.lineTo(x[1], y[0])
  shape.lineTo(x[1], y[1] - cutMm)
  shape.lineTo(x[1] - cutMm, y[1])
  shape.lineTo(x[0] + cutMm, y[1])
  shape.lineTo(x[0], y[1] - cutMm)
  shape.closePath()
  if (slot) shape.holes.push(slotPath(slot.y, slot.radiusMm))
  const geometry = new ExtrudeGeometry(shape, { depth: z[1] - z[0], bevelEnabled: false, curveSegments: 12 })
  geometry.translate(0, 0, z[0])
  return shadowed(geometry, material)
}

const slotPath = ([from, to]: readonly [number, number], radiusMm: number): Path => {
  const path = new Path()
  path.absarc(0, to - radiusMm, radiusMm, 0, Math.PI, false)
  path.absarc(0, from + radiusMm, radiusMm, Math.PI, 2 * Math.PI, false)
  path.closePath()
  return path
}

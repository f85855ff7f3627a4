import type { BladeMesh } from './mesh.ts'

/** How a solid of this program begins; the form leaves eighty signs free for it, but not the word that begins the form in text. */
export const SOLID_MARK = 'Camberwright blade, mm'

const HEADER_BYTES = 80
/** A normal and three corners of three figures each, and two spare bytes. */
const TRIANGLE_BYTES = 50

type Point = readonly [number, number, number]

const cornerOf = ({ positions, indices }: BladeMesh, at: number): Point => {
  const k = 3 * (indices[at] as number)
  return [positions[k] as number, positions[k + 1] as number, positions[k + 2] as number]
}

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

/** Outward, unit length; none for a triangle without area. */
const normalOf = (a: Point, b: Point, c: Point): Point => {
  const [p, q] = [minus(b, a), minus(c, a)]
  const cross: Point = [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]]
  const length = Math.hypot(...cross)
  return length === 0 ? [0, 0, 0] : [cross[0] / length, cross[1] / length, cross[2] / length]
}

/** A closed surface as a binary STL file, the form that every solid modeller reads; its figures are millimetres. */
export const stlOf = (mesh: BladeMesh): Uint8Array<ArrayBuffer> => {
  const count = mesh.indices.length / 3
  const bytes = new Uint8Array(HEADER_BYTES + 4 + count * TRIANGLE_BYTES)
  const view = new DataView(bytes.buffer)
  for (let k = 0; k < SOLID_MARK.length; k++) bytes[k] = SOLID_MARK.charCodeAt(k)
  view.setUint32(HEADER_BYTES, count, true)
  for (let k = 0; k < count; k++) {
    const corners = [cornerOf(mesh, 3 * k), cornerOf(mesh, 3 * k + 1), cornerOf(mesh, 3 * k + 2)] as const
    const figures = [normalOf(...corners), ...corners].flat()
    for (const [f, figure] of figures.entries())
      view.setFloat32(HEADER_BYTES + 4 + k * TRIANGLE_BYTES + 4 * f, figure, true)
  }
  return bytes
}

import { expect, test } from 'vitest'
import { type BladeField, type BladeMesh, bevelNormals, bladeMesh, placeBevel } from '../../geometry/mesh.ts'

/** A small blade: 10 wide, 2 thick, 5 x 4 nodes. */
const field: BladeField = {
  acrossCount: 5,
  throughCount: 4,
  uMm: Float64Array.from([-5, -2.5, 0, 2.5, 5]),
  nMm: Float64Array.from([0, 2 / 3, 4 / 3, 2]),
}
const JOIN_MM = 9

/** V = 2 n + lean u: a flat bevel, of which every node lies on one plane. */
const flat = (lean = 0): Float64Array =>
  Float64Array.from({ length: 20 }, (_, at) => {
    const [i, j] = [Math.floor(at / 4), at % 4]
    return 2 * (field.nMm[j] as number) + lean * (field.uMm[i] as number)
  })

type Point = readonly [number, number, number]

const corners = ({ positions, indices }: BladeMesh, triangle: number): [Point, Point, Point] =>
  [0, 1, 2].map((k) => {
    const at = 3 * (indices[3 * triangle + k] as number)
    return [positions[at], positions[at + 1], positions[at + 2]] as unknown as Point
  }) as [Point, Point, Point]

/** Signed volume by tetrahedra from the origin; positive where triangles run counter-clockwise seen from outside. */
const volumeMm3 = (mesh: BladeMesh): number => {
  let six = 0
  for (let k = 0; k < mesh.indices.length / 3; k++) {
    const [a, b, c] = corners(mesh, k)
    six += a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0])
  }
  return six / 6
}

test('the surface is closed: every edge is met once in each direction', () => {
  const { indices } = bladeMesh(field, flat(0.1), JOIN_MM)
  const met = new Map<string, number>()
  for (let k = 0; k < indices.length; k += 3) {
    for (const [a, b] of [
      [0, 1],
      [1, 2],
      [2, 0],
    ] as const) {
      const key = `${indices[k + a]} ${indices[k + b]}`
      met.set(key, (met.get(key) ?? 0) + 1)
    }
  }
  for (const [key, times] of met) {
    expect(times, key).toBe(1)
    expect(met.get(key.split(' ').reverse().join(' ')), `${key} reversed`).toBe(1)
  }
})

test('it holds the steel above the bevel', () => {
  // Width 10, thickness 2, up to v = 9; the bevel takes half of 4 x 2 x 10: 180 - 40 = 140. A lean about the middle changes nothing.
  expect(volumeMm3(bladeMesh(field, flat(), JOIN_MM))).toBeCloseTo(140, 4)
  expect(volumeMm3(bladeMesh(field, flat(0.1), JOIN_MM))).toBeCloseTo(140, 4)
})

test('what is ground off is missing from it', () => {
  const mesh = bladeMesh(field, flat(), JOIN_MM)
  placeBevel(
    mesh,
    flat().map((v) => v + 0.25),
  )
  // 0.25 over a bevel of 10 x 2 seen along v.
  expect(volumeMm3(mesh)).toBeCloseTo(140 - 5, 4)
})

test('the bevel comes first and faces the wheel', () => {
  const mesh = bladeMesh(field, flat(), JOIN_MM)
  expect(mesh.bevelIndexCount).toBe(4 * 3 * 2 * 3)
  for (let k = 0; k < mesh.bevelIndexCount / 3; k++) {
    const [a, b, c] = corners(mesh, k)
    const alongV = (b[2] - a[2]) * (c[0] - a[0]) - (b[0] - a[0]) * (c[2] - a[2])
    expect(alongV).toBeLessThan(0)
  }
})

test('normals of a flat bevel are those of its plane', () => {
  const normals = new Float32Array(60)
  bevelNormals(field, flat(0.5), normals)
  // The plane v = 2 n + u / 2 has the outward direction (1/2, -1, -2) in x, y, z.
  const length = Math.sqrt(0.25 + 1 + 4)
  for (let at = 0; at < 20; at++) {
    expect(normals[3 * at]).toBeCloseTo(0.5 / length, 5)
    expect(normals[3 * at + 1]).toBeCloseTo(-1 / length, 5)
    expect(normals[3 * at + 2]).toBeCloseTo(-2 / length, 5)
  }
})

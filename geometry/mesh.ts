/**
 * The lower end of a blade as a closed surface of triangles, from the field V. Axes x = u, y = v, z = -n: right-handed, so
 * that triangles run counter-clockwise seen from outside and the signed volume is positive. The flat parts end at
 * `joinMm`, above every heel, where the plain rest of the blade begins.
 *
 * Vertices 0 .. acrossCount x throughCount - 1 are the bevel's, in the field's own order (geometry/pose.ts); after them
 * comes the rim at `joinMm` on the back, then on the upper face, each from left to right:
 *
 *     back rim  ______________  face rim        edge = row j = 0
 *              |  upper cap   |                 heel = row j = last
 *        back  |              |  face           back joins edge and back rim, face joins heel and face rim
 *              |____bevel_____|
 */
export interface BladeField {
  readonly acrossCount: number
  readonly throughCount: number
  readonly uMm: Float64Array
  readonly nMm: Float64Array
}

/** A surface of triangles; three numbers a vertex, three indices a triangle. */
export interface BladeMesh {
  readonly positions: Float32Array
  /** Whole surface, the bevel's triangles first. */
  readonly indices: Uint32Array
  /** Indices of the bevel alone, from the start of `indices`. */
  readonly bevelIndexCount: number
  readonly joinMm: number
}

const nodeCount = ({ acrossCount, throughCount }: BladeField): number => acrossCount * throughCount

/** Writes the field's v into the bevel's vertices; nothing else of the mesh moves. */
export const placeBevel = ({ positions }: BladeMesh, vMm: Float64Array): void => {
  for (let at = 0; at < vMm.length; at++) positions[3 * at + 1] = vMm[at] as number
}

const positionsOf = (field: BladeField, vMm: Float64Array, joinMm: number): Float32Array => {
  const { acrossCount, throughCount, uMm, nMm } = field
  const positions = new Float32Array(3 * (nodeCount(field) + 2 * acrossCount))
  const put = (at: number, u: number, v: number, n: number): void => positions.set([u, v, -n], 3 * at)
  for (let i = 0; i < acrossCount; i++) {
    const u = uMm[i] as number
    for (let j = 0; j < throughCount; j++) {
      const at = i * throughCount + j
      put(at, u, vMm[at] as number, nMm[j] as number)
    }
    put(nodeCount(field) + i, u, joinMm, nMm[0] as number)
    put(nodeCount(field) + acrossCount + i, u, joinMm, nMm[throughCount - 1] as number)
  }
  return positions
}

/** A four-cornered patch, counter-clockwise seen from outside. */
type Patch = readonly [number, number, number, number]

const bevelPatches = ({ acrossCount, throughCount }: BladeField): Patch[] =>
  Array.from({ length: acrossCount - 1 }, (_, i) =>
    Array.from({ length: throughCount - 1 }, (_, j): Patch => {
      const at = i * throughCount + j
      return [at, at + 1, at + 1 + throughCount, at + throughCount]
    }),
  ).flat()

/** Back, upper face and cap between two columns. */
const flatPatches = (field: BladeField): Patch[] => {
  const { acrossCount, throughCount } = field
  const back = nodeCount(field)
  const face = back + acrossCount
  return Array.from({ length: acrossCount - 1 }, (_, i): Patch[] => {
    const edge = i * throughCount
    const heel = edge + throughCount - 1
    return [
      [edge, edge + throughCount, back + i + 1, back + i],
      [heel + throughCount, heel, face + i, face + i + 1],
      [back + i, back + i + 1, face + i + 1, face + i],
    ]
  }).flat()
}

/** One side of the blade: a fan from its back rim over edge .. heel to its face rim. @param turn reverses the right side */
const sideTriangles = (field: BladeField, column: number, turn: boolean): number[] => {
  const { throughCount, acrossCount } = field
  const hub = nodeCount(field) + column
  const nodes = Array.from({ length: throughCount }, (_, j) => column * throughCount + j)
  const border = [...nodes, nodeCount(field) + acrossCount + column]
  return border.slice(1).flatMap((next, k) => {
    const previous = border[k] as number
    return turn ? [hub, previous, next] : [hub, next, previous]
  })
}

const triangles = ([a, b, c, d]: Patch): number[] => [a, b, c, a, c, d]

/** @param joinMm v of the flat end, above every point of the field */
export const bladeMesh = (field: BladeField, vMm: Float64Array, joinMm: number): BladeMesh => {
  const bevel = bevelPatches(field).flatMap(triangles)
  const rest = [
    ...flatPatches(field).flatMap(triangles),
    ...sideTriangles(field, 0, false),
    ...sideTriangles(field, field.acrossCount - 1, true),
  ]
  return {
    positions: positionsOf(field, vMm, joinMm),
    indices: Uint32Array.from([...bevel, ...rest]),
    bevelIndexCount: bevel.length,
    joinMm,
  }
}

/**
 * Outward normals of the bevel's nodes by differences in the field, (dV/du, -1, -dV/dn) made unit length.
 * @param normals three numbers a node, filled
 */
export const bevelNormals = (field: BladeField, vMm: Float64Array, normals: Float32Array): void => {
  const { acrossCount, throughCount, uMm, nMm } = field
  for (let i = 0; i < acrossCount; i++) {
    const left = Math.max(i - 1, 0)
    const right = Math.min(i + 1, acrossCount - 1)
    const acrossMm = (uMm[right] as number) - (uMm[left] as number)
    for (let j = 0; j < throughCount; j++) {
      const below = Math.max(j - 1, 0)
      const above = Math.min(j + 1, throughCount - 1)
      const slopeU = ((vMm[right * throughCount + j] as number) - (vMm[left * throughCount + j] as number)) / acrossMm
      const rise = (vMm[i * throughCount + above] as number) - (vMm[i * throughCount + below] as number)
      const slopeN = rise / ((nMm[above] as number) - (nMm[below] as number))
      const length = Math.sqrt(slopeU * slopeU + 1 + slopeN * slopeN)
      const at = 3 * (i * throughCount + j)
      normals[at] = slopeU / length
      normals[at + 1] = -1 / length
      normals[at + 2] = -slopeN / length
    }
  }
}

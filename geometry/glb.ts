import type { BladeMesh } from './mesh.ts'
import { MM_PER_M } from './units.ts'

/**
 * A blade as binary glTF 2.0, by the Khronos specification (registry.khronos.org/glTF/specs/2.0): a header of twelve bytes,
 * then a chunk of JSON and a chunk of bytes, each filled up to four. Lengths are metres, as the specification has it; its
 * axes are those of geometry/mesh.ts. Bevel and rest are two primitives over one set of corners, so that each takes its own
 * steel. No normals are written: a reader then shades every triangle flat, which is how a ground blade looks.
 */
const MAGIC = 0x46546c67
const VERSION = 2
const JSON_CHUNK = 0x4e4f534a
const BIN_CHUNK = 0x004e4942
const HEADER_BYTES = 12
const CHUNK_HEAD_BYTES = 8

const FLOAT = 5126
const UNSIGNED_INT = 5125
const ARRAY_BUFFER = 34_962
const ELEMENT_ARRAY_BUFFER = 34_963

const filledUp = (length: number): number => Math.ceil(length / 4) * 4

const inMetres = ({ positions }: BladeMesh): Float32Array => positions.map((mm) => mm / MM_PER_M)

/** Least or most of each coordinate; the specification asks for both of positions. */
const extremes = (positions: Float32Array, choose: (a: number, b: number) => number): number[] =>
  [0, 1, 2].map((axis) => {
    let found = positions[axis] as number
    for (let k = axis; k < positions.length; k += 3) found = choose(found, positions[k] as number)
    return found
  })

const steel = (name: string, grey: number, roughness: number) => ({
  name,
  pbrMetallicRoughness: { baseColorFactor: [grey, grey, grey, 1], metallicFactor: 1, roughnessFactor: roughness },
})

const contentsOf = (mesh: BladeMesh, positions: Float32Array, about: Readonly<Record<string, string | number>>) => {
  const { indices, bevelIndexCount } = mesh
  const [pointBytes, indexBytes] = [positions.byteLength, indices.byteLength]
  const index = (byteOffset: number, count: number) => ({
    bufferView: 1,
    byteOffset,
    componentType: UNSIGNED_INT,
    count,
    type: 'SCALAR',
  })
  const range = { min: extremes(positions, Math.min), max: extremes(positions, Math.max) }
  return {
    asset: { version: '2.0', generator: 'Camberwright', extras: { unit: 'metre', ...about } },
    scene: 0,
    scenes: [{ nodes: [0] }],
    nodes: [{ mesh: 0, name: 'blade' }],
    materials: [steel('bevel', 0.7, 0.35), steel('blade', 0.5, 0.5)],
    meshes: [
      {
        name: 'blade',
        primitives: [0, 1].map((part) => ({ attributes: { POSITION: 0 }, indices: 1 + part, material: part })),
      },
    ],
    accessors: [
      { bufferView: 0, componentType: FLOAT, count: positions.length / 3, type: 'VEC3', ...range },
      index(0, bevelIndexCount),
      index(4 * bevelIndexCount, indices.length - bevelIndexCount),
    ],
    bufferViews: [
      { buffer: 0, byteOffset: 0, byteLength: pointBytes, target: ARRAY_BUFFER },
      { buffer: 0, byteOffset: pointBytes, byteLength: indexBytes, target: ELEMENT_ARRAY_BUFFER },
    ],
    buffers: [{ byteLength: pointBytes + indexBytes }],
  }
}

/** JSON in signs that are one byte each: what lies beyond is written by its number, as JSON allows. */
const plainJson = (value: unknown): string =>
  JSON.stringify(value).replace(/[^ -~]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`)

/** Writes figures little end first, as both chunks want it, whatever the machine. */
const putPoints = (view: DataView, from: number, positions: Float32Array): void =>
  positions.forEach((metres, k) => {
    view.setFloat32(from + 4 * k, metres, true)
  })

const putIndices = (view: DataView, from: number, indices: Uint32Array): void =>
  indices.forEach((index, k) => {
    view.setUint32(from + 4 * k, index, true)
  })

const putHead = (view: DataView, at: number, words: readonly number[]): void =>
  words.forEach((word, k) => {
    view.setUint32(at + 4 * k, word, true)
  })

/** @param about goes into the file as the asset's extras: what blade it is, at what moment */
export const glbOf = (
  mesh: BladeMesh,
  about: Readonly<Record<string, string | number>> = {},
): Uint8Array<ArrayBuffer> => {
  const positions = inMetres(mesh)
  const json = plainJson(contentsOf(mesh, positions, about))
  const jsonBytes = filledUp(json.length)
  const binBytes = positions.byteLength + mesh.indices.byteLength
  const binAt = HEADER_BYTES + CHUNK_HEAD_BYTES + jsonBytes
  const bytes = new Uint8Array(binAt + CHUNK_HEAD_BYTES + binBytes)
  const view = new DataView(bytes.buffer)
  putHead(view, 0, [MAGIC, VERSION, bytes.length, jsonBytes, JSON_CHUNK])
  const jsonAt = HEADER_BYTES + CHUNK_HEAD_BYTES
  for (let k = 0; k < jsonBytes; k++) bytes[jsonAt + k] = k < json.length ? json.charCodeAt(k) : 0x20
  putHead(view, binAt, [binBytes, BIN_CHUNK])
  putPoints(view, binAt + CHUNK_HEAD_BYTES, positions)
  putIndices(view, binAt + CHUNK_HEAD_BYTES + positions.byteLength, mesh.indices)
  return bytes
}

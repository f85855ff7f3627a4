import Module from 'manifold-3d'
import { describe, expect, it } from 'vitest'
import { glbOf } from '../../geometry/glb.ts'
import { advance } from '../../geometry/grind.ts'
import type { BladeMesh } from '../../geometry/mesh.ts'
import { solidOf } from '../../geometry/solid.ts'
import { SOLID_MARK, stlOf } from '../../geometry/stl.ts'
import { begin, exampleJob, found } from './example.ts'

const kernel = await Module()
kernel.setup()

/** The example ground for some sweeps, as a solid that ends where the unground one does, and what the engine took off. */
const groundFor = (sweeps: number) => {
  const job = exampleJob({ grid: { across: 57, through: 9 } })
  const { state, motion } = begin(job)
  if (sweeps > 0) found(advance(state, motion, sweeps * job.motion.stepsPerSweep))
  return { mesh: solidOf(state, state.vMm), removedMm3: state.volumeRemovedMm3, job }
}

interface Triangles {
  readonly positions: ArrayLike<number>
  readonly indices: ArrayLike<number>
}

/** Signed volume by tetrahedra from the origin. */
const volumeOf = ({ positions, indices }: Triangles): number => {
  const at = (k: number, axis: number): number => positions[3 * (indices[k] as number) + axis] as number
  let six = 0
  for (let k = 0; k < indices.length; k += 3) {
    const [a, b, c] = [k, k + 1, k + 2]
    six +=
      at(a, 0) * (at(b, 1) * at(c, 2) - at(b, 2) * at(c, 1)) -
      at(a, 1) * (at(b, 0) * at(c, 2) - at(b, 2) * at(c, 0)) +
      at(a, 2) * (at(b, 0) * at(c, 1) - at(b, 1) * at(c, 0))
  }
  return six / 6
}

/** A solid modeller's opinion: whether this is one closed body, and what it holds. */
const judged = ({ positions, indices }: Triangles) => {
  const solid = new kernel.Manifold(
    new kernel.Mesh({ numProp: 3, vertProperties: Float32Array.from(positions), triVerts: Uint32Array.from(indices) }),
  )
  return { status: solid.status(), genus: solid.genus(), volume: solid.volume() }
}

const readStl = (bytes: Uint8Array) => {
  const view = new DataView(bytes.buffer)
  const count = view.getUint32(80, true)
  const corners: number[] = []
  const normals: number[] = []
  for (let k = 0; k < count; k++) {
    for (let f = 0; f < 12; f++) (f < 3 ? normals : corners).push(view.getFloat32(84 + 50 * k + 4 * f, true))
  }
  return { count, corners, normals, head: String.fromCharCode(...bytes.subarray(0, SOLID_MARK.length)) }
}

/** Corners that lie at the same place become one again, as a reader of STL does it. */
const welded = (corners: readonly number[]): Triangles => {
  const seen = new Map<string, number>()
  const positions: number[] = []
  const indices = Array.from({ length: corners.length / 3 }, (_, k) => {
    const place = corners.slice(3 * k, 3 * k + 3)
    const key = place.join()
    if (!seen.has(key)) {
      seen.set(key, seen.size)
      positions.push(...place)
    }
    return seen.get(key) as number
  })
  return { positions, indices }
}

interface Accessor {
  readonly bufferView: number
  readonly byteOffset?: number
  readonly componentType: number
  readonly count: number
  readonly type: string
  readonly min?: number[]
  readonly max?: number[]
}

/** A glb read by the chunks and views of the Khronos specification. */
const readGlb = (bytes: Uint8Array) => {
  const view = new DataView(bytes.buffer)
  const word = (at: number): number => view.getUint32(at, true)
  const jsonLength = word(12)
  const json = JSON.parse(new TextDecoder().decode(bytes.subarray(20, 20 + jsonLength)))
  const binAt = 20 + jsonLength
  const accessors: Accessor[] = json.accessors
  const read = (accessor: Accessor): number[] => {
    const { byteOffset: from, byteLength } = json.bufferViews[accessor.bufferView]
    const at = binAt + 8 + from + (accessor.byteOffset ?? 0)
    const figures = accessor.count * (accessor.type === 'VEC3' ? 3 : 1)
    expect((accessor.byteOffset ?? 0) + 4 * figures).toBeLessThanOrEqual(byteLength)
    return Array.from({ length: figures }, (_, k) =>
      accessor.componentType === 5126 ? view.getFloat32(at + 4 * k, true) : word(at + 4 * k),
    )
  }
  return {
    head: [word(0), word(4), word(8), word(16), word(binAt), word(binAt + 4)],
    jsonLength,
    json,
    accessors,
    read,
  }
}

const wholeOf = ({ json, accessors, read }: ReturnType<typeof readGlb>): Triangles => ({
  positions: read(accessors[0] as Accessor),
  indices: json.meshes[0].primitives.flatMap((part: { indices: number }) => read(accessors[part.indices] as Accessor)),
})

/**
 * Corners are kept as 32-bit figures: at 40 mm they lie to within 2 µm, but each on its own, so over the bevel's 5 x 10^2 mm2
 * what they leave open of the volume is far below this (mm3).
 */
const VOLUME_MM3 = 0.02

describe('the ground blade as a solid', () => {
  const unground = groundFor(0)
  const ground = groundFor(30)

  /** The two end at different heights: a flat end moved by d holds d times the section more. */
  const sectionMm2 = 57 * 3.2
  const missing = (before: Triangles, after: Triangles, scale = 1): number =>
    (volumeOf(before) - volumeOf(after)) * scale + (ground.mesh.joinMm - unground.mesh.joinMm) * sectionMm2

  it('has lost what the engine took off', () => {
    expect(ground.removedMm3).toBeGreaterThan(10)
    expect(Math.abs(missing(unground.mesh, ground.mesh) - ground.removedMm3)).toBeLessThan(VOLUME_MM3)
  })

  it('is one closed body to a solid modeller', () => {
    const { status, genus, volume } = judged(ground.mesh)
    expect([status, genus]).toEqual(['NoError', 0])
    expect(volume).toBeCloseTo(volumeOf(ground.mesh), 2)
  })

  describe('as STL', () => {
    const read = readStl(stlOf(ground.mesh))

    it('says its unit, and counts its triangles', () => {
      expect(read.head).toMatch(/mm$/)
      expect(stlOf(ground.mesh).length).toBe(84 + 50 * read.count)
      expect(3 * read.count).toBe(ground.mesh.indices.length)
    })

    it('is closed, to scale in millimetres, and its normals point outwards', () => {
      const solid = welded(read.corners)
      expect(judged(solid)).toMatchObject({ status: 'NoError', genus: 0 })
      expect(volumeOf(solid)).toBeCloseTo(volumeOf(ground.mesh), 2)
      const across = read.corners.filter((_, k) => k % 3 === 0)
      expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(57, 4)
      // The divergence theorem: a third of the sum of place times outward normal times area is the volume.
      let third = 0
      for (let k = 0; k < read.count; k++) {
        const [a, b, c] = [0, 1, 2].map((j) => read.corners.slice(9 * k + 3 * j, 9 * k + 3 * j + 3)) as [
          number[],
          number[],
          number[],
        ]
        const [p, q] = [b, c].map((point) => point.map((x, i) => x - (a[i] as number))) as [number[], number[]]
        const cross = [1, 2, 0].map(
          (i) => (p[i] as number) * (q[(i + 1) % 3] as number) - (p[(i + 1) % 3] as number) * (q[i] as number),
        )
        const area = Math.hypot(...cross) / 2
        third += (a.reduce((sum, x, i) => sum + x * (read.normals[3 * k + i] as number), 0) * area) / 3
      }
      expect(third).toBeCloseTo(volumeOf(ground.mesh), 1)
    })
  })

  describe('as glTF', () => {
    const bytes = glbOf(ground.mesh, { blade: 'Iron É', sweep: 30 })
    const glb = readGlb(bytes)

    it('is a glb of version 2 with its two chunks, whole and filled up to four', () => {
      expect(glb.head).toEqual([0x46546c67, 2, bytes.length, 0x4e4f534a, glb.json.buffers[0].byteLength, 0x004e4942])
      expect(glb.jsonLength % 4).toBe(0)
      expect(bytes.length).toBe(28 + glb.jsonLength + glb.json.buffers[0].byteLength)
      expect(glb.json.asset).toMatchObject({ version: '2.0', extras: { unit: 'metre', blade: 'Iron É', sweep: 30 } })
    })

    it('has views that lie side by side in the buffer, each accessor on its own four bytes', () => {
      const [points, indices] = glb.json.bufferViews
      expect([points.target, indices.target]).toEqual([34_962, 34_963])
      expect(indices.byteOffset).toBe(points.byteLength)
      expect(indices.byteOffset + indices.byteLength).toBe(glb.json.buffers[0].byteLength)
      for (const { byteOffset = 0 } of glb.accessors) expect(byteOffset % 4).toBe(0)
    })

    it('gives least and most of its corners as they are, in metres', () => {
      const { positions } = wholeOf(glb)
      for (const axis of [0, 1, 2]) {
        const along = Array.from(positions).filter((_, k) => k % 3 === axis)
        expect(glb.accessors[0]?.min?.[axis]).toBe(Math.min(...along) + 0)
        expect(glb.accessors[0]?.max?.[axis]).toBe(Math.max(...along) + 0)
      }
      expect((glb.accessors[0]?.max?.[0] ?? 0) - (glb.accessors[0]?.min?.[0] ?? 0)).toBeCloseTo(0.057, 7)
    })

    it('is closed, names only corners it has, and has lost what the engine took off', () => {
      const whole = wholeOf(glb)
      expect(Math.max(...Array.from(whole.indices))).toBe((glb.accessors[0]?.count ?? 0) - 1)
      const inMm = { ...whole, positions: Array.from(whole.positions, (metres) => metres * 1000) }
      expect(judged(inMm)).toMatchObject({ status: 'NoError', genus: 0 })
      const before = wholeOf(readGlb(glbOf(unground.mesh)))
      expect(Math.abs(missing(before, whole, 1e9) - ground.removedMm3)).toBeLessThan(VOLUME_MM3)
    })

    it('keeps bevel and rest apart, each with its own steel', () => {
      const [bevel, rest] = glb.json.meshes[0].primitives
      expect(glb.accessors[bevel.indices]?.count).toBe((ground.mesh satisfies BladeMesh).bevelIndexCount)
      expect(glb.json.materials[bevel.material].name).toBe('bevel')
      expect(glb.json.materials[rest.material].name).toBe('blade')
    })
  })
})

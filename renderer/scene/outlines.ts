import {
  BackSide,
  EdgesGeometry,
  type InterleavedBufferAttribute,
  type Material,
  Mesh,
  MeshBasicMaterial,
  type Object3D,
} from 'three'
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js'
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js'
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js'
import type { RunShape } from '../worker/protocol.ts'
import { type BoxMm, boxOf } from './solids.ts'

/** Edges sharper than this are drawn (degrees): all of a block's, only the ends of a round part. */
const SHARP_DEG = 42
/** Points this near a seam lie on it (mm). */
const SEAM_MM = 0.01
/** Width of every line in the picture (CSS px): a printed page shows it as a fine drawn line. */
const LINE_PX = 1.3
/** What of a round part's outline stands outside it (CSS px): with a line's inner half, as wide as the others to the eye. */
const OUTLINE_PX = 1.1
/** Least height of a picture that the outline's width is reckoned for (px); larger ones get it in proportion. */
const PICTURE_PX = 620

/** A black hull a little larger than a round part, seen from inside only: what shows of it is the part's outline. */
const hullMaterial = (): MeshBasicMaterial => {
  const material = new MeshBasicMaterial({ color: 0x000000, side: BackSide, toneMapped: false })
  material.onBeforeCompile = (shader) => {
    shader.vertexShader = shader.vertexShader.replace(
      '#include <project_vertex>',
      `#include <project_vertex>
vec3 hullNormal = normalMatrix * normal;
gl_Position.xy += normalize(hullNormal.xy + vec2(1e-6)) * gl_Position.w * ${((2 * OUTLINE_PX) / PICTURE_PX).toFixed(5)};`,
    )
  }
  return material
}

/** Pairs of points of the ground end: its edge, heel and both sides. */
const tipPairs = ({ acrossCount, throughCount }: RunShape): number[] => {
  const at = (i: number, j: number): number => i * throughCount + j
  const pairs: number[] = []
  for (let i = 1; i < acrossCount; i++) for (const j of [0, throughCount - 1]) pairs.push(at(i - 1, j), at(i, j))
  for (let j = 1; j < throughCount; j++) for (const i of [0, acrossCount - 1]) pairs.push(at(i, j - 1), at(i, j))
  const rim = acrossCount * throughCount
  for (const i of [0, acrossCount - 1]) pairs.push(at(i, 0), rim + i, at(i, throughCount - 1), rim + acrossCount + i)
  return pairs
}

/** Lines of the ground end, and what lays them on its points anew after these have moved. */
const tipLines = (tip: Mesh, shape: RunShape) => {
  const pairs = tipPairs(shape)
  const ends = new Float32Array(3 * pairs.length)
  const geometry = new LineSegmentsGeometry()
  geometry.setPositions(ends)
  const { data } = geometry.getAttribute('instanceStart') as InterleavedBufferAttribute
  const positions = tip.geometry.getAttribute('position').array
  const follow = (): void => {
    for (let k = 0; k < pairs.length; k++) {
      const from = 3 * (pairs[k] as number)
      for (let axis = 0; axis < 3; axis++) ends[3 * k + axis] = positions[from + axis] as number
    }
    data.needsUpdate = true
  }
  return { geometry, follow }
}

/** A solid's sharp edges, but none along a seam that two parts share: `userData.seamMm` is its y. */
const sharpEdges = (mesh: Mesh): LineSegmentsGeometry => {
  const edges = new EdgesGeometry(mesh.geometry, SHARP_DEG)
  const seamMm: unknown = mesh.userData.seamMm
  const position = edges.getAttribute('position')
  const onSeam = (at: number): boolean => typeof seamMm === 'number' && Math.abs(position.getY(at) - seamMm) < SEAM_MM
  const kept: number[] = []
  for (let at = 0; at < position.count; at += 2) {
    if (onSeam(at) && onSeam(at + 1)) continue
    for (const end of [at, at + 1]) kept.push(position.getX(end), position.getY(end), position.getZ(end))
  }
  edges.dispose()
  return new LineSegmentsGeometry().setPositions(kept)
}

/** On paper a block's broken edges would be two lines side by side: it gets sharp ones. */
const squareUp = (mesh: Mesh): void => {
  const box = mesh.userData.boxMm as BoxMm | undefined
  if (!box) return
  mesh.geometry.dispose()
  mesh.geometry = boxOf(box)
}

const isUnseen = ({ visible }: Material): boolean => !visible

/** Every mesh that has something to show: a shade that paper does without has no outline either. */
const meshesOf = (parts: readonly Object3D[]): Mesh[] => {
  const meshes: Mesh[] = []
  for (const part of parts)
    part.traverse((child) => {
      if (child instanceof Mesh && ![child.material].flat().every(isUnseen)) meshes.push(child)
    })
  return meshes
}

/** The lines of a machine drawn for paper. */
export interface Outlines {
  /** Lays the lines of the ground end on its points, which have moved. */
  follow(): void
  /** Frees the materials; the lines go with their parts. */
  dispose(): void
}

/** Hull of a round part: of its wall alone, whose ends have sharp edges. */
const hullOf = ({ geometry }: Mesh, hull: Material, none: Material): Mesh | null => {
  if (geometry.type === 'CapsuleGeometry') return new Mesh(geometry, hull)
  return geometry.type === 'CylinderGeometry' ? new Mesh(geometry, [hull, none, none]) : null
}

/** Draws the lines of solid parts for paper. Flat parts get their sharp edges, round ones their outline too. */
export const outline = (parts: readonly Object3D[], tip: Mesh, shape: RunShape): Outlines => {
  const line = new LineMaterial({ color: 0x000000, linewidth: LINE_PX, toneMapped: false })
  const hull = hullMaterial()
  const none = new MeshBasicMaterial({ visible: false })
  const ofTip = tipLines(tip, shape)
  for (const mesh of meshesOf(parts)) {
    squareUp(mesh)
    const moving = mesh === tip
    const lines = new LineSegments2(moving ? ofTip.geometry : sharpEdges(mesh), line)
    lines.frustumCulled = !moving
    const hullMesh = hullOf(mesh, hull, none)
    if (hullMesh) mesh.add(hullMesh)
    mesh.add(lines)
  }
  return {
    follow: ofTip.follow,
    dispose: () => {
      for (const material of [line, hull, none]) material.dispose()
    },
  }
}

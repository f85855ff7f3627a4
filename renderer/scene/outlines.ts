import {
  BackSide,
  BufferGeometry,
  EdgesGeometry,
  LineBasicMaterial,
  LineSegments,
  type Material,
  Mesh,
  MeshBasicMaterial,
  type Object3D,
} from 'three'
import type { RunShape } from '../worker/protocol.ts'

/** Edges sharper than this are drawn (degrees): all of a block's, only the ends of a round part. */
const SHARP_DEG = 42
/** Points this near a seam lie on it (mm). */
const SEAM_MM = 0.01
/** Width of the outline of round parts in the picture (px). */
const OUTLINE_PX = 1.5
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

/** Edge, heel and both sides of the ground end, on its own moving points. */
const tipLines = (tip: Mesh, { acrossCount, throughCount }: RunShape): BufferGeometry => {
  const at = (i: number, j: number): number => i * throughCount + j
  const lines: number[] = []
  for (let i = 1; i < acrossCount; i++) for (const j of [0, throughCount - 1]) lines.push(at(i - 1, j), at(i, j))
  for (let j = 1; j < throughCount; j++) for (const i of [0, acrossCount - 1]) lines.push(at(i, j - 1), at(i, j))
  const rim = acrossCount * throughCount
  for (const i of [0, acrossCount - 1]) lines.push(at(i, 0), rim + i, at(i, throughCount - 1), rim + acrossCount + i)
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', tip.geometry.getAttribute('position'))
  geometry.setIndex(lines)
  return geometry
}

/** A solid's sharp edges, but none along a seam that two parts share: `userData.seamMm` is its y. */
const sharpEdges = (mesh: Mesh): BufferGeometry => {
  const edges = new EdgesGeometry(mesh.geometry, SHARP_DEG)
  const seamMm: unknown = mesh.userData.seamMm
  if (typeof seamMm !== 'number') return edges
  const position = edges.getAttribute('position')
  const onSeam = (at: number): boolean => Math.abs(position.getY(at) - seamMm) < SEAM_MM
  const kept: number[] = []
  for (let at = 0; at < position.count; at += 2) if (!(onSeam(at) && onSeam(at + 1))) kept.push(at, at + 1)
  return edges.setIndex(kept)
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

/**
 * Draws the lines of solid parts for paper. Flat parts get their sharp edges, round ones their outline too.
 * @returns what frees the two materials; the lines go with their parts
 */
export const outline = (parts: readonly Object3D[], tip: Mesh, shape: RunShape): (() => void) => {
  const line = new LineBasicMaterial({ color: 0x000000, toneMapped: false })
  const hull = hullMaterial()
  for (const mesh of meshesOf(parts)) {
    const moving = mesh === tip
    const lines = new LineSegments(moving ? tipLines(tip, shape) : sharpEdges(mesh), line)
    lines.frustumCulled = !moving
    if (/^(Cylinder|Capsule)/.test(mesh.geometry.type)) mesh.add(new Mesh(mesh.geometry, hull))
    mesh.add(lines)
  }
  return () => {
    line.dispose()
    hull.dispose()
  }
}

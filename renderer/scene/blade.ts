import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Group, type Material, Mesh } from 'three'
import type { Job } from '../../geometry/job.ts'
import { type BladeMesh, bevelNormals, bladeMesh, placeBevel } from '../../geometry/mesh.ts'
import type { Frame, RunShape } from '../worker/protocol.ts'
import { showLostField } from './bevelShading.ts'
import { showSlot } from './brushed.ts'
import { createLostField } from './lostField.ts'
import type { SceneMaterials } from './materials.ts'
import type { MachineFigures } from './placement.ts'
import { plate } from './solids.ts'

/** Flat part of the blade between the highest heel and the plain rest of it (mm): more than a grind ever takes. */
const JOIN_SPARE_MM = 4
/** The plain rest of the blade overlaps the ground end by this (mm), face on face, so that no seam gapes. */
const OVERLAP_MM = 1
const SLOT_RADIUS_MM = 5

/** The blade with its live bevel; `show` moves it to a frame. */
export interface BladePart {
  readonly group: Group
  /** The ground end, whose surface moves. */
  readonly tip: Mesh
  show(frame: Frame): void
  /** Frees what no other part knows of. */
  dispose(): void
}

/** Upper end of the blade (mm from the edge): short of the guide bearing, or well above the bar. */
export const bladeTopMm = (job: Job, { projectionMm, pivotVMm }: MachineFigures): number => {
  const arm = job.fixture.kind === 'steered' ? (job.fixture.guideArmMm ?? 0) : 0
  return Math.max(pivotVMm + arm - 18, projectionMm + 34)
}

/** Where each of the bevel's nodes stands in the picture of its losses, in shares of it; none for the rest of the end. */
const cellsOf = ({ acrossCount, throughCount }: RunShape, count: number): Float32Array => {
  const cells = new Float32Array(2 * count)
  for (let at = 0; at < acrossCount * throughCount; at++) {
    const [i, j] = [Math.floor(at / throughCount), at % throughCount]
    cells.set([(j + 0.5) / throughCount, (i + 0.5) / acrossCount], 2 * at)
  }
  return cells
}

const tipGeometry = (shape: RunShape, mesh: BladeMesh): BufferGeometry => {
  const { positions, indices, bevelIndexCount } = mesh
  const count = positions.length / 3
  const geometry = new BufferGeometry()
  const moving = (attribute: BufferAttribute): BufferAttribute => attribute.setUsage(DynamicDrawUsage)
  const uv = new Float32Array(2 * count)
  for (let at = 0; at < count; at++) uv.set([positions[3 * at] as number, positions[3 * at + 1] as number], 2 * at)
  geometry.setAttribute('position', moving(new BufferAttribute(positions, 3)))
  geometry.setAttribute('normal', moving(new BufferAttribute(new Float32Array(3 * count).fill(0.577), 3)))
  geometry.setAttribute('cell', new BufferAttribute(cellsOf(shape, count), 2))
  geometry.setAttribute('uv', new BufferAttribute(uv, 2))
  geometry.setIndex(new BufferAttribute(indices, 1))
  geometry.addGroup(0, bevelIndexCount, 0)
  geometry.addGroup(bevelIndexCount, indices.length - bevelIndexCount, 1)
  return geometry
}

/** The plain rest of the blade, slotted where it is wide enough to have a slot. */
const buildRest = (job: Job, figures: MachineFigures, joinMm: number, materials: SceneMaterials): Mesh => {
  const { widthMm, thicknessMm } = job.blade
  const topMm = bladeTopMm(job, figures)
  const slotFromMm = joinMm + 26
  const slotToMm = figures.projectionMm - 18
  const slot = widthMm > 30 && slotToMm - slotFromMm > 24
  const rest = plate(
    { x: [-widthMm / 2, widthMm / 2], y: [joinMm - OVERLAP_MM, topMm], z: [-thicknessMm, 0] },
    Math.min(widthMm * 0.16, 9),
    slot ? { y: [slotFromMm, slotToMm], radiusMm: SLOT_RADIUS_MM } : null,
    materials.back,
  )
  if (slot) showSlot(materials.back, slotFromMm + SLOT_RADIUS_MM, slotToMm - SLOT_RADIUS_MM, SLOT_RADIUS_MM)
  rest.userData.seamMm = joinMm - OVERLAP_MM
  return rest
}

/** Builds the blade of a run. */
export const buildBlade = (
  job: Job,
  figures: MachineFigures,
  shape: RunShape,
  materials: SceneMaterials,
): BladePart => {
  const joinMm = Math.max(...shape.vStartMm) + JOIN_SPARE_MM
  const mesh = bladeMesh(shape, shape.vStartMm, joinMm)
  const geometry = tipGeometry(shape, mesh)
  const lost = createLostField(shape)
  const bevel: Material = materials.bevel
  showLostField(bevel, lost.texture)
  const group = new Group()
  const tip = new Mesh(geometry, [bevel, materials.tip])
  tip.castShadow = true
  tip.receiveShadow = true
  tip.frustumCulled = false
  group.add(tip, buildRest(job, figures, joinMm, materials))
  const position = geometry.getAttribute('position')
  const normal = geometry.getAttribute('normal')
  return {
    group,
    tip,
    show: ({ vMm }) => {
      placeBevel(mesh, vMm)
      bevelNormals(shape, vMm, normal.array as Float32Array)
      position.needsUpdate = true
      normal.needsUpdate = true
      lost.fill(vMm)
    },
    dispose: () => lost.texture.dispose(),
  }
}

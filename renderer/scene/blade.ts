import { BufferAttribute, BufferGeometry, CircleGeometry, Color, DynamicDrawUsage, Group, Mesh } from 'three'
import { INK_THICKNESS_MM } from '../../geometry/ink.ts'
import type { Job } from '../../geometry/job.ts'
import { type BladeMesh, bevelNormals, bladeMesh, placeBevel } from '../../geometry/mesh.ts'
import type { Frame, RunShape } from '../worker/protocol.ts'
import type { SceneMaterials } from './materials.ts'
import type { MachineFigures } from './placement.ts'
import { plate } from './solids.ts'

/** Flat part of the blade between the highest heel and the plain rest of it (mm): more than a grind ever takes. */
const JOIN_SPARE_MM = 4
/** Marks lie this far off the back (mm), enough to win the depth test at any camera. */
const MARK_LIFT_MM = 0.08
/** Height of the touch band at the scale's full pressure (mm). */
const TOUCH_HEIGHT_MM = 9
/** The plain rest of the blade overlaps the ground end by this (mm), face on face, so that no seam gapes. */
const OVERLAP_MM = 1
/** Bright ground steel, linear light. */
const GROUND_STEEL = new Color(0.62, 0.63, 0.62)

/** The blade with its live bevel; `show` moves it to a frame. */
export interface BladePart {
  readonly group: Group
  show(frame: Frame, fullPressureNPerMm: number): void
}

/** Upper end of the blade (mm from the edge): short of the guide bearing, or well above the bar. */
export const bladeTopMm = (job: Job, { projectionMm, pivotVMm }: MachineFigures): number => {
  const arm = job.fixture.kind === 'steered' ? (job.fixture.guideArmMm ?? 0) : 0
  return Math.max(pivotVMm + arm - 18, projectionMm + 34)
}

const tipGeometry = (mesh: BladeMesh): BufferGeometry => {
  const { positions, indices, bevelIndexCount } = mesh
  const count = positions.length / 3
  const geometry = new BufferGeometry()
  const moving = (attribute: BufferAttribute): BufferAttribute => attribute.setUsage(DynamicDrawUsage)
  const uv = new Float32Array(2 * count)
  for (let at = 0; at < count; at++) uv.set([positions[3 * at] as number, positions[3 * at + 1] as number], 2 * at)
  geometry.setAttribute('position', moving(new BufferAttribute(positions, 3)))
  geometry.setAttribute('normal', moving(new BufferAttribute(new Float32Array(3 * count).fill(0.577), 3)))
  geometry.setAttribute('color', moving(new BufferAttribute(new Float32Array(3 * count).fill(1), 3)))
  geometry.setAttribute('uv', new BufferAttribute(uv, 2))
  geometry.setIndex(new BufferAttribute(indices, 1))
  geometry.addGroup(0, bevelIndexCount, 0)
  geometry.addGroup(bevelIndexCount, indices.length - bevelIndexCount, 1)
  return geometry
}

/** Ink where less was lost than its own thickness, bare steel where more; torn along the scratches by a fixed grain. */
const paintInk = (shape: RunShape, vMm: Float64Array, ink: Color, colours: Float32Array): void => {
  const { vStartMm, throughCount } = shape
  for (let at = 0; at < vMm.length; at++) {
    const lost = (vMm[at] as number) - (vStartMm[at] as number)
    const inked = lost <= INK_THICKNESS_MM
    const scratch = 0.93 + 0.07 * Math.sin(Math.floor(at / throughCount) * 12.9)
    const colour = inked ? ink : GROUND_STEEL
    colours[3 * at] = colour.r * (inked ? 1 : scratch)
    colours[3 * at + 1] = colour.g * (inked ? 1 : scratch)
    colours[3 * at + 2] = colour.b * (inked ? 1 : scratch)
  }
}

const touchGeometry = ({ acrossCount, uMm }: RunShape): BufferGeometry => {
  const positions = new Float32Array(6 * acrossCount)
  const indices: number[] = []
  for (let i = 0; i < acrossCount; i++) {
    const u = uMm[i] as number
    positions.set([u, 0, MARK_LIFT_MM, u, 0, MARK_LIFT_MM], 6 * i)
    if (i > 0) indices.push(2 * i - 2, 2 * i, 2 * i + 1, 2 * i - 2, 2 * i + 1, 2 * i - 1)
  }
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3).setUsage(DynamicDrawUsage))
  geometry.setIndex(indices)
  return geometry
}

const showTouch = (geometry: BufferGeometry, shape: RunShape, frame: Frame, fullPressure: number): void => {
  const position = geometry.getAttribute('position') as BufferAttribute
  for (let i = 0; i < shape.acrossCount; i++) {
    const edgeMm = frame.vMm[i * shape.throughCount] as number
    const share = Math.min((frame.pressureNPerMm[i] as number) / fullPressure, 1)
    position.setY(2 * i, edgeMm)
    position.setY(2 * i + 1, edgeMm + share * TOUCH_HEIGHT_MM)
  }
  position.needsUpdate = true
}

const buildDot = (job: Job, side: 'left' | 'right', materials: SceneMaterials): Mesh => {
  const radiusMm = Math.min(2.6, job.blade.widthMm * 0.07)
  const dot = new Mesh(new CircleGeometry(radiusMm, 24), materials.dot)
  const uMm = job.blade.widthMm / 2 - 2.6 * radiusMm
  dot.position.set(side === 'left' ? -uMm : uMm, 16, MARK_LIFT_MM)
  return dot
}

/** The plain rest of the blade, slotted where it is wide enough to have a slot. */
const buildRest = (job: Job, figures: MachineFigures, joinMm: number, materials: SceneMaterials): Mesh => {
  const { widthMm, thicknessMm } = job.blade
  const topMm = bladeTopMm(job, figures)
  const slotFromMm = joinMm + 26
  const slotToMm = figures.projectionMm - 18
  const slot = widthMm > 30 && slotToMm - slotFromMm > 24
  return plate(
    { x: [-widthMm / 2, widthMm / 2], y: [joinMm - OVERLAP_MM, topMm], z: [-thicknessMm, 0] },
    Math.min(widthMm * 0.16, 9),
    slot ? { y: [slotFromMm, slotToMm], radiusMm: 5 } : null,
    materials.back,
  )
}

/** @param inkColour CSS colour of layout ink */
export const buildBlade = (
  job: Job,
  figures: MachineFigures,
  shape: RunShape,
  dot: 'left' | 'right',
  inkColour: string,
  materials: SceneMaterials,
): BladePart => {
  const joinMm = Math.max(...shape.vStartMm) + JOIN_SPARE_MM
  const mesh = bladeMesh(shape, shape.vStartMm, joinMm)
  const geometry = tipGeometry(mesh)
  const touch = touchGeometry(shape)
  const ink = new Color(inkColour)
  const group = new Group()
  const tip = new Mesh(geometry, [materials.bevel, materials.tip])
  tip.castShadow = true
  tip.receiveShadow = true
  const band = new Mesh(touch, materials.touch)
  for (const part of [tip, band]) part.frustumCulled = false
  group.add(tip, band, buildRest(job, figures, joinMm, materials), buildDot(job, dot, materials))
  const [position, normal, colour] = ['position', 'normal', 'color'].map((name) => geometry.getAttribute(name))
  return {
    group,
    show: (frame, fullPressureNPerMm) => {
      placeBevel(mesh, frame.vMm)
      bevelNormals(shape, frame.vMm, normal?.array as Float32Array)
      paintInk(shape, frame.vMm, ink, colour?.array as Float32Array)
      for (const attribute of [position, normal, colour]) if (attribute) attribute.needsUpdate = true
      showTouch(touch, shape, frame, fullPressureNPerMm)
    },
  }
}

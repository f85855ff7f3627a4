import { BufferAttribute, BufferGeometry, CircleGeometry, DynamicDrawUsage, Group, Mesh } from 'three'
import { INK_THICKNESS_MM } from '../../geometry/ink.ts'
import type { Job } from '../../geometry/job.ts'
import type { Frame, RunShape } from '../worker/protocol.ts'
import type { SceneMaterials } from './materials.ts'

/** Marks lie this far off the back (mm), enough to win the depth test at any camera. */
const MARK_LIFT_MM = 0.08
/** Height of the touch band at the scale's full pressure (mm). */
const TOUCH_HEIGHT_MM = 9
/** Least height of the band where the wheel touches at all (mm): the touch is always to be seen. */
const TOUCH_LEAST_MM = 0.9
/** The burr as drawn, from its shortest to its longest tooth (mm): a hint, as a real one would be lost in the picture. */
const BURR_MM = [0.25, 0.75] as const

/** Least strength of the touch colour where the wheel touches at all, 0 to 1. */
const TOUCH_LEAST = 0.75

/**
 * The burr curls up to the back: out from the edge and off the back in equal parts, which clears the rim at any bevel angle
 * under 45 degrees.
 */
const BURR_PART = Math.SQRT1_2

/** What is drawn on the blade: where it touches and how hard, the burr, the dot. */
export interface MarksPart {
  readonly group: Group
  show(frame: Frame, fullPressureNPerMm: number): void
}

/** Two vertices a column, the first of each on the edge. */
const ribbon = ({ acrossCount, uMm }: RunShape, zMm: number): BufferGeometry => {
  const positions = new Float32Array(6 * acrossCount)
  const indices: number[] = []
  for (let i = 0; i < acrossCount; i++) {
    const u = uMm[i] as number
    positions.set([u, 0, zMm, u, 0, zMm], 6 * i)
    if (i > 0) indices.push(2 * i - 2, 2 * i, 2 * i + 1, 2 * i - 2, 2 * i + 1, 2 * i - 1)
  }
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3).setUsage(DynamicDrawUsage))
  geometry.setIndex(indices)
  return geometry
}

/** Puts a ribbon's columns from the edge to a height and a distance off the back of their own. */
const raise = (
  geometry: BufferGeometry,
  shape: RunShape,
  frame: Frame,
  heightMm: (column: number) => number,
  offBackMm: (column: number) => number,
): void => {
  const position = geometry.getAttribute('position') as BufferAttribute
  for (let i = 0; i < shape.acrossCount; i++) {
    const edgeMm = frame.vMm[i * shape.throughCount] as number
    position.setY(2 * i, edgeMm)
    position.setY(2 * i + 1, edgeMm + heightMm(i))
    position.setZ(2 * i + 1, offBackMm(i))
  }
  position.needsUpdate = true
}

/** Height of the touch band at a pressure: nothing where there is none. */
export const touchHeightMm = (pressureNPerMm: number, fullNPerMm: number): number =>
  pressureNPerMm > 0
    ? TOUCH_LEAST_MM + Math.min(pressureNPerMm / fullNPerMm, 1) * (TOUCH_HEIGHT_MM - TOUCH_LEAST_MM)
    : 0

/** Length of the burr's tooth at a column, ragged and always the same; nothing where the wheel has not cut through to the edge. */
export const burrMm = (lostAtEdgeMm: number, column: number): number => {
  if (lostAtEdgeMm <= INK_THICKNESS_MM) return 0
  const ragged = Math.abs(Math.sin(column * 12.9898) * 43_758.5453) % 1
  return BURR_MM[0] + ragged * (BURR_MM[1] - BURR_MM[0])
}

const buildDot = (job: Job, side: 'left' | 'right', materials: SceneMaterials): Mesh => {
  const radiusMm = Math.min(2.6, job.blade.widthMm * 0.07)
  const dot = new Mesh(new CircleGeometry(radiusMm, 24), materials.dot)
  const uMm = job.blade.widthMm / 2 - 2.6 * radiusMm
  dot.position.set(side === 'left' ? -uMm : uMm, 16, MARK_LIFT_MM)
  return dot
}

/** The marks of a run's blade, in the blade frame. */
export const buildMarks = (job: Job, shape: RunShape, dot: 'left' | 'right', materials: SceneMaterials): MarksPart => {
  const touch = ribbon(shape, MARK_LIFT_MM)
  const strength = new BufferAttribute(new Float32Array(8 * shape.acrossCount).fill(1), 4).setUsage(DynamicDrawUsage)
  touch.setAttribute('color', strength)
  const burr = ribbon(shape, MARK_LIFT_MM)
  const group = new Group()
  const band = new Mesh(touch, materials.touch)
  const teeth = new Mesh(burr, materials.burr)
  for (const part of [band, teeth]) part.frustumCulled = false
  group.add(band, teeth, buildDot(job, dot, materials))
  let now: Frame
  let fullPressure = 1
  const touchOf = (i: number): number => touchHeightMm(now.pressureNPerMm[i] as number, fullPressure)
  const light = (): void => {
    for (let i = 0; i < shape.acrossCount; i++) {
      const share = Math.min((now.pressureNPerMm[i] as number) / fullPressure, 1)
      // The band is strongest on the edge itself.
      strength.setW(2 * i, TOUCH_LEAST + (1 - TOUCH_LEAST) * share)
      strength.setW(2 * i + 1, TOUCH_LEAST + (0.9 - TOUCH_LEAST) * share)
    }
    strength.needsUpdate = true
  }
  const burrOf = (i: number): number => {
    const at = i * shape.throughCount
    return BURR_PART * burrMm((now.vMm[at] as number) - (shape.vStartMm[at] as number), i)
  }
  const downBurr = (i: number): number => -burrOf(i)
  const offBack = (i: number): number => MARK_LIFT_MM + burrOf(i)
  const onBack = (): number => MARK_LIFT_MM
  return {
    group,
    show: (frame, fullPressureNPerMm) => {
      now = frame
      fullPressure = fullPressureNPerMm
      raise(touch, shape, frame, touchOf, onBack)
      light()
      raise(burr, shape, frame, downBurr, offBack)
    },
  }
}

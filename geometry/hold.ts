import type { Freedom } from './freedom.ts'
import type { Job } from './job.ts'
import type { SetUp } from './setUp.ts'
import { cos, sin } from './trigonometry.ts'
import { radFromDeg } from './units.ts'

/**
 * How the fixture holds the blade in the wheel's frame, at every turn that it allows: one pose model for all kinds.
 *
 * A point (u, v, n) of the blade comes to x along the wheel's axis and to d, h across it, each a linear form
 *
 *     x = atZero + perU u + perV v + perN n
 *
 * whose coefficients are still + cosine * withCosine + sine * withSine of the turn, because a rotation by any angle
 * about an axis k is  k k' + cosine (1 - k k') + sine [k]x  (Rodrigues). The tilt about the bar and the traverse along it are
 * added by `place`. In order: the blade lies askew in its clamp, the fixture turns about its axis, the bar lies out of parallel.
 */
export interface Hold {
  readonly still: Forms
  readonly withCosine: Forms
  readonly withSine: Forms
}

/** A linear form of a point of the blade. */
export interface Form {
  atZero: number
  perU: number
  perV: number
  perN: number
}

/** The wheel's coordinates as forms: x along its axis, d across it along the blade in the square position, h across both. */
export interface Forms {
  readonly x: Form
  readonly d: Form
  readonly h: Form
}

type Vector = readonly [number, number, number]
/** Row by row. */
type Matrix = readonly [Vector, Vector, Vector]

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const times = (m: Matrix, p: Vector): Vector => [dot(m[0], p), dot(m[1], p), dot(m[2], p)]
const column = (m: Matrix, k: 0 | 1 | 2): Vector => [m[0][k], m[1][k], m[2][k]]
const product = (a: Matrix, b: Matrix): Matrix => {
  const row = (r: Vector): Vector => [dot(r, column(b, 0)), dot(r, column(b, 1)), dot(r, column(b, 2))]
  return [row(a[0]), row(a[1]), row(a[2])]
}

/** Turn in the plane of the back, + lets the right corner be ground back. */
const yawMatrix = (rad: number): Matrix => [
  [cos(rad), sin(rad), 0],
  [-sin(rad), cos(rad), 0],
  [0, 0, 1],
]

/** Turn about an axis along the blade, + lets the right corner be ground back. */
const rollMatrix = (rad: number): Matrix => [
  [cos(rad), 0, -sin(rad)],
  [0, 1, 0],
  [sin(rad), 0, cos(rad)],
]

/** Axis of the fixture's own turn, unit length, and a point on it. */
interface Axis {
  readonly along: Vector
  readonly through: Vector
}

/** A pivot leans with its fixture's error, and with a tapered iron that lies on its bevel side. */
const axisOf = (job: Job, freedom: Freedom): Axis => {
  const { pivotOffsetMm, rollHeightMm, seatsOn } = job.fixture
  if (freedom.turns === 'roll') return { along: [0, -1, 0], through: [pivotOffsetMm, 0, rollHeightMm] }
  const leanRad = radFromDeg(job.errors.pivotTiltDeg + (seatsOn === 'bevelSide' ? job.blade.taperDeg : 0))
  return { along: [0, -sin(leanRad), -cos(leanRad)], through: [pivotOffsetMm, freedom.pivotToEdgeMm, 0] }
}

/** The three parts of Rodrigues' formula: unmoved by the turn, with its cosine, with its sine. */
const partsOf = ([x, y, z]: Vector): readonly [Matrix, Matrix, Matrix] => [
  [
    [x * x, x * y, x * z],
    [y * x, y * y, y * z],
    [z * x, z * y, z * z],
  ],
  [
    [1 - x * x, -x * y, -x * z],
    [-y * x, 1 - y * y, -y * z],
    [-z * x, -z * y, 1 - z * z],
  ],
  [
    [0, -z, y],
    [z, 0, -x],
    [-y, x, 0],
  ],
]

const formOf = ([perU, perV, perN]: Vector, atZero: number): Form => ({ atZero, perU, perV, perN })

const formsOf = (matrix: Matrix, offset: Vector): Forms => ({
  x: formOf(matrix[0], offset[0]),
  d: formOf(matrix[1], offset[1]),
  h: formOf(matrix[2], offset[2]),
})

const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]

/** The hold of a job: its fixture's turn between constant rotations of mounting and bar. */
export const holdOf = (job: Job, setUp: SetUp, freedom: Freedom): Hold => {
  const { barAskewDeg, barRollDeg, mountingAskewDeg } = job.errors
  const { along, through } = axisOf(job, freedom)
  const bar = product(yawMatrix(radFromDeg(barAskewDeg)), rollMatrix(radFromDeg(barRollDeg)))
  const mounting = yawMatrix(radFromDeg(mountingAskewDeg))
  const clamp: Vector = [job.fixture.pivotOffsetMm, freedom.pivotToEdgeMm, 0]
  const fromAxis = minus(minus(clamp, times(mounting, clamp)), through)
  const axisFromBar = times(bar, minus(through, [0, setUp.projectionMm, setUp.seatOffsetMm]))
  const [unmoved, cosine, sine] = partsOf(along)
  const formsWith = (part: Matrix, offset: Vector): Forms => {
    const turned = product(bar, part)
    return formsOf(product(turned, mounting), plus(times(turned, fromAxis), offset))
  }
  const none: Vector = [0, 0, 0]
  return {
    still: formsWith(unmoved, axisFromBar),
    withCosine: formsWith(cosine, none),
    withSine: formsWith(sine, none),
  }
}

const newForm = (): Form => ({ atZero: 0, perU: 0, perV: 0, perN: 0 })

/** Forms to be filled. */
export const newForms = (): Forms => ({ x: newForm(), d: newForm(), h: newForm() })

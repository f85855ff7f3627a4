import { type Form, type Forms, type Hold, newForms } from './hold.ts'
import type { Rim } from './rim.ts'

/**
 * A blade's bevel as a field over its nodes, and what it is pressed on.
 *
 * The field holds the v at which material begins, row-major, one row a column of the blade:
 *
 *     index = i * throughCount + j        i: 0 left corner .. right corner,  j: 0 edge (back, n = 0) .. heel side (n = t)
 *
 * Nodes sit on both ends, which therefore carry half weights: the edge is row j = 0, the corners are nodes.
 */
export interface Bed {
  readonly acrossCount: number
  readonly throughCount: number
  /** Across, 0 on the centre line, + right. */
  readonly uMm: Float64Array
  /** From the back into the thickness. */
  readonly nMm: Float64Array
  /** Edges of each column, acrossCount + 1 of them; the outer columns are half as wide. */
  readonly columnEdgesMm: Float64Array
  /** Height of each row's share of the thickness. */
  readonly rowHeightsMm: Float64Array
  readonly hold: Hold
  readonly rim: Rim
  readonly barDistanceMm: number
  /** Sine and cosine of the tilt at which the unworn edge meets the wheel at the bevel aimed at. */
  readonly tiltSine: number
  readonly tiltCosine: number
}

/** Where the blade stands: slopes, not angles, so that every host computes the same bits. */
export interface Pose {
  /** Tangent of the turn about the bar from the set-up tilt, + into the wheel. */
  depthSlope: number
  /** Tangent of the fixture's own turn, yaw or roll, + lets the right corner be ground back. */
  turnSlope: number
  /** The blade's centre line along the wheel. */
  traverseMm: number
  /** Tangent of a roll that the fixture should not have, + like the turn. */
  rollSlope: number
}

/**
 * The pose worked out: the forms of `Hold` with tilt and traverse, and their growth with turnSlope. d and h are turned about the
 * wheel's axis so that d lies along the blade as the wheel sees it: h does not grow with v.
 */
export interface Placed {
  readonly forms: Forms
  readonly perTurn: Forms
  /** Growth of d and h with depthSlope, alike for all nodes. */
  dPerDepth: number
  hPerDepth: number
}

export const newPlaced = (): Placed => ({ forms: newForms(), perTurn: newForms(), dPerDepth: 0, hPerDepth: 0 })

const turnForm = (out: Form, a: Form, b: Form, c: Form, still: number, cosine: number, sine: number): void => {
  out.atZero = still * a.atZero + cosine * b.atZero + sine * c.atZero
  out.perU = still * a.perU + cosine * b.perU + sine * c.perU
  out.perV = still * a.perV + cosine * b.perV + sine * c.perV
  out.perN = still * a.perN + cosine * b.perN + sine * c.perN
}

/** Forms of a turn: still x unmoved part + cosine and sine parts. With still 0 and derivatives: their growth. */
const turnForms = (out: Forms, hold: Hold, still: number, cosine: number, sine: number): void => {
  turnForm(out.x, hold.still.x, hold.withCosine.x, hold.withSine.x, still, cosine, sine)
  turnForm(out.d, hold.still.d, hold.withCosine.d, hold.withSine.d, still, cosine, sine)
  turnForm(out.h, hold.still.h, hold.withCosine.h, hold.withSine.h, still, cosine, sine)
}

/** Turns two coordinates into each other: a becomes cosine a + sine b, b becomes cosine b - sine a. */
const rotate = (a: Form, b: Form, cosine: number, sine: number): void => {
  const { atZero, perU, perV, perN } = a
  turnForm(a, a, a, b, 0, cosine, sine)
  b.atZero = b.atZero * cosine - atZero * sine
  b.perU = b.perU * cosine - perU * sine
  b.perV = b.perV * cosine - perV * sine
  b.perN = b.perN * cosine - perN * sine
}

/** Rolls the whole fixture. */
const roll = ({ forms, perTurn }: Placed, rollSlope: number): void => {
  const cosine = 1 / Math.sqrt(1 + rollSlope * rollSlope)
  const sine = rollSlope * cosine
  rotate(forms.h, forms.x, cosine, sine)
  rotate(perTurn.h, perTurn.x, cosine, sine)
}

/** Turns d and h about the wheel's axis so that h does not grow with v. */
const align = (placed: Placed): void => {
  const { forms, perTurn, dPerDepth, hPerDepth } = placed
  const { d, h } = forms
  const along = Math.sqrt(d.perV * d.perV + h.perV * h.perV)
  const cosine = d.perV / along
  const sine = h.perV / along
  rotate(d, h, cosine, sine)
  rotate(perTurn.d, perTurn.h, cosine, sine)
  placed.dPerDepth = dPerDepth * cosine + hPerDepth * sine
  placed.hPerDepth = hPerDepth * cosine - dPerDepth * sine
}

/** Works a pose out. */
export const place = ({ hold, tiltSine, tiltCosine, barDistanceMm }: Bed, pose: Pose, placed: Placed): void => {
  const { depthSlope, turnSlope, rollSlope } = pose
  const { forms, perTurn } = placed
  const cosine = 1 / Math.sqrt(1 + turnSlope * turnSlope)
  const sine = turnSlope * cosine
  turnForms(forms, hold, 1, cosine, sine)
  turnForms(perTurn, hold, 0, -sine * cosine * cosine, cosine * cosine * cosine)
  if (rollSlope !== 0) roll(placed, rollSlope)
  const depthSecant = Math.sqrt(1 + depthSlope * depthSlope)
  const tilted = (tiltSine - depthSlope * tiltCosine) / depthSecant
  const level = (tiltCosine + depthSlope * tiltSine) / depthSecant
  forms.x.atZero += pose.traverseMm
  forms.d.atZero += barDistanceMm * level
  forms.h.atZero -= barDistanceMm * tilted
  const tiltPerDepth = -1 / (1 + depthSlope * depthSlope)
  placed.dPerDepth = -barDistanceMm * tilted * tiltPerDepth
  placed.hPerDepth = -barDistanceMm * level * tiltPerDepth
  if (forms.h.perV !== 0) align(placed)
}

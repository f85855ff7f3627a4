import { INK_THICKNESS_MM } from '../../../geometry/ink.ts'
import type { RunShape } from '../../worker/protocol.ts'

/**
 * Loss of steel with a sign: where the wheel has cut, what it took; beyond the border of the cut, what the loss beside it
 * comes to when it is carried on straight. A cut ends between two nodes, and the sign changes there, not at the node.
 */
export interface SignedLoss {
  readonly acrossCount: number
  readonly throughCount: number
  /** Row-major as the field (mm); above INK_THICKNESS_MM the ink is gone. */
  readonly lossMm: Float64Array
}

type Shape = Pick<RunShape, 'acrossCount' | 'throughCount' | 'vStartMm'>

/** Nodes that nothing was carried on to. */
const FAR = Number.NEGATIVE_INFINITY
/** Twice carried on, every cell through which a border runs has all its corners. */
const CARRIED = 2

/** The loss carried on to a node from one side, where that is known. @param room nodes there are on that side */
const carriedFrom = (known: Float64Array, at: number, step: number, room: number): number => {
  if (room < 1) return FAR
  const near = known[at + step] as number
  if (near === FAR) return FAR
  const beyond = room > 1 ? (known[at + 2 * step] as number) : FAR
  const fall = beyond === FAR ? Math.abs(near) : Math.max(beyond - near, 0)
  return Math.min(near - fall, 0)
}

/** Carries the loss on to nodes next to known ones; of several ways to a node the mildest holds. */
const carryOn = ({ acrossCount, throughCount, lossMm }: SignedLoss, known: Float64Array): void => {
  for (let i = 0, at = 0; i < acrossCount; i++) {
    for (let j = 0; j < throughCount; j++, at++) {
      if ((known[at] as number) !== FAR) continue
      let carried = carriedFrom(known, at, -1, j)
      carried = Math.max(carried, carriedFrom(known, at, 1, throughCount - 1 - j))
      carried = Math.max(carried, carriedFrom(known, at, -throughCount, i))
      carried = Math.max(carried, carriedFrom(known, at, throughCount, acrossCount - 1 - i))
      lossMm[at] = carried
    }
  }
}

/** @returns scratch for one shape, so that a running grind allocates nothing */
export const newSignedLoss = ({ acrossCount, throughCount }: Shape): SignedLoss & { readonly known: Float64Array } => ({
  acrossCount,
  throughCount,
  lossMm: new Float64Array(acrossCount * throughCount),
  known: new Float64Array(acrossCount * throughCount),
})

/** Fills the loss of a field. */
export const fillSignedLoss = (
  signed: SignedLoss & { readonly known: Float64Array },
  vMm: Float64Array,
  { vStartMm }: Shape,
): void => {
  const { lossMm, known } = signed
  for (let at = 0; at < lossMm.length; at++) {
    const lost = (vMm[at] as number) - (vStartMm[at] as number)
    lossMm[at] = lost > INK_THICKNESS_MM ? lost : FAR
  }
  for (let turn = 0; turn < CARRIED; turn++) {
    known.set(lossMm)
    carryOn(signed, known)
  }
}

/** Ink tears along the scratches by at most this share of a row: no more than the grid leaves open. */
const TORN_ROWS = 0.3

/** @returns how far the border is torn at a streak of the bevel, in rows */
export const tornRows = (streak: number): number =>
  TORN_ROWS * (2 * (Math.abs(Math.sin(streak * 78.233) * 12_543.17) % 1) - 1)

/** How the bevel is painted: so many pixels from node to node, in these colours. */
export interface InkPaint {
  readonly finer: number
  /** As a canvas has them in memory. */
  readonly ink: number
  /** For each column of pixels: ground steel has its streaks, and ink tears along them (rows). */
  readonly ground: Uint32Array
  readonly tornRows: Float64Array
}

/**
 * Paints the bevel, edge up: steel where loss between the four nodes round a pixel comes out above what ink is thick. One
 * loop over all pixels, as a call for each would make numbers of its own, some ten megabytes a second while it plays.
 * @param pixels row by row, a row as long as `ground`
 */
export const paintInk = (
  pixels: Uint32Array,
  { acrossCount, throughCount, lossMm }: SignedLoss,
  { finer, ink, ground, tornRows: torn }: InkPaint,
): void => {
  const width = ground.length
  const height = pixels.length / width
  for (let x = 0; x < width; x++) {
    const i = Math.min(Math.floor(x / finer), acrossCount - 2)
    const p = x / finer - i
    for (let y = 0; y < height; y++) {
      const through = Math.min(Math.max(y / finer + (torn[x] as number), 0), throughCount - 1)
      const j = Math.min(Math.floor(through), throughCount - 2)
      const q = through - j
      const at = i * throughCount + j
      // Nodes never reached are infinitely far below nothing; one millimetre is far enough to reckon with.
      const left = Math.max(lossMm[at] as number, -1) * (1 - q) + Math.max(lossMm[at + 1] as number, -1) * q
      const next = at + throughCount
      const right = Math.max(lossMm[next] as number, -1) * (1 - q) + Math.max(lossMm[next + 1] as number, -1) * q
      pixels[y * width + x] = left * (1 - p) + right * p <= INK_THICKNESS_MM ? ink : (ground[x] as number)
    }
  }
}

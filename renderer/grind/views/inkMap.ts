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

/** Carries the loss on to nodes next to known ones; of several ways to a node the mildest holds. */
const carryOn = ({ acrossCount, throughCount, lossMm }: SignedLoss, known: Float64Array): void => {
  for (let i = 0, at = 0; i < acrossCount; i++) {
    for (let j = 0; j < throughCount; j++, at++) {
      if ((known[at] as number) !== FAR) continue
      let carried = FAR
      const from = (inside: boolean, step: number, twoInside: boolean): void => {
        if (!inside) return
        const near = known[at + step] as number
        if (near === FAR) return
        const beyond = twoInside ? (known[at + 2 * step] as number) : FAR
        const fall = beyond === FAR ? Math.abs(near) : Math.max(beyond - near, 0)
        carried = Math.max(carried, Math.min(near - fall, 0))
      }
      from(j > 0, -1, j > 1)
      from(j < throughCount - 1, 1, j < throughCount - 2)
      from(i > 0, -throughCount, i > 1)
      from(i < acrossCount - 1, throughCount, i < acrossCount - 2)
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

/** Loss at a place between nodes, straight between the four round it; at nodes never reached it is far below nothing. */
export const signedLossAt = ({ acrossCount, throughCount, lossMm }: SignedLoss, across: number, through: number) => {
  const i = Math.min(Math.floor(across), acrossCount - 2)
  const j = Math.min(Math.floor(through), throughCount - 2)
  const [p, q] = [across - i, through - j]
  const at = i * throughCount + j
  const node = (k: number): number => Math.max(lossMm[k] as number, -1)
  const left = node(at) * (1 - q) + node(at + 1) * q
  return left * (1 - p) + (node(at + throughCount) * (1 - q) + node(at + throughCount + 1) * q) * p
}

/** Ink tears along the scratches by at most this share of a row: no more than the grid leaves open. */
const TORN_ROWS = 0.3

/** @returns how far the border is torn at a streak of the bevel, in rows */
export const tornRows = (streak: number): number =>
  TORN_ROWS * (2 * (Math.abs(Math.sin(streak * 78.233) * 12_543.17) % 1) - 1)

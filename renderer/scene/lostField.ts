import { DataTexture, DataUtils, HalfFloatType, LinearFilter, RedFormat } from 'three'
import { INK_THICKNESS_MM } from '../../geometry/ink.ts'
import type { RunShape } from '../worker/protocol.ts'

/** Largest value kept, in thicknesses of ink: beyond it all is bare, and half floats hold it well enough. */
const MOST = 2000

/** Loss at every node as a picture, in thicknesses of ink: above 1 the ink is gone. One row a column of the bevel. */
export interface LostField {
  readonly texture: DataTexture
  fill(vMm: Float64Array): void
}

/**
 * Where nothing is lost beside a node that lost something, the loss is carried on straight and goes below nothing: so the
 * border of the ink runs between nodes, by the rule of geometry/band.ts, and not in steps from one to the next.
 */
export const carriedOn = (beside: number, beyond: number): number =>
  beside > 1 ? Math.max(Math.min(2 * beside - beyond, 0), -beside) : -MOST

export const createLostField = ({ acrossCount, throughCount, vStartMm }: RunShape): LostField => {
  const lost = new Float32Array(acrossCount * throughCount)
  const data = new Uint16Array(lost.length)
  const texture = new DataTexture(data, throughCount, acrossCount, RedFormat, HalfFloatType)
  texture.magFilter = LinearFilter
  texture.minFilter = LinearFilter
  const signed = (at: number): number => {
    const own = lost[at] as number
    if (own > 1) return Math.min(own, MOST)
    const j = at % throughCount
    const ahead = j + 2 < throughCount ? carriedOn(lost[at + 1] as number, lost[at + 2] as number) : -MOST
    const behind = j >= 2 ? carriedOn(lost[at - 1] as number, lost[at - 2] as number) : -MOST
    return Math.max(ahead, behind, -MOST)
  }
  return {
    texture,
    fill: (vMm) => {
      for (let at = 0; at < lost.length; at++)
        lost[at] = ((vMm[at] as number) - (vStartMm[at] as number)) / INK_THICKNESS_MM
      for (let at = 0; at < lost.length; at++) data[at] = DataUtils.toHalfFloat(signed(at))
      texture.needsUpdate = true
    },
  }
}

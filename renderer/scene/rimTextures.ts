import { ClampToEdgeWrapping, DataTexture, LinearFilter, RepeatWrapping, RGBAFormat } from 'three'
import { grainFrom, onceMade } from './textures.ts'

/** How far round the rim the contact's marks reach from the edge (mm). */
export const CONTACT_ALONG_MM = { above: 46, below: 22 } as const
/** How far they reach beyond the blade on each side (mm). */
export const CONTACT_ACROSS_MM = 14

type AlphaAt = (s: number, t: number) => number

/** Opacity by place, as a white picture. @param alphaAt from shares across the picture, 0 to 1 each */
const veilData = (widthPx: number, heightPx: number, alphaAt: AlphaAt): Uint8Array<ArrayBuffer> => {
  const data = new Uint8Array(4 * widthPx * heightPx).fill(255)
  for (let at = 0; at < widthPx * heightPx; at++) {
    const alpha = alphaAt(((at % widthPx) + 0.5) / widthPx, (Math.floor(at / widthPx) + 0.5) / heightPx)
    data[4 * at + 3] = Math.round(255 * Math.min(Math.max(alpha, 0), 1))
  }
  return data
}

const veilOf = (widthPx: number, heightPx: number, data: Uint8Array<ArrayBuffer>): DataTexture => {
  const texture = new DataTexture(data, widthPx, heightPx, RGBAFormat)
  texture.magFilter = LinearFilter
  texture.minFilter = LinearFilter
  texture.wrapT = ClampToEdgeWrapping
  texture.needsUpdate = true
  return texture
}

const ALONG_MM = CONTACT_ALONG_MM.above + CONTACT_ALONG_MM.below
const veil = (widthPx: number, heightPx: number, alphaAt: AlphaAt): DataTexture =>
  veilOf(widthPx, heightPx, veilData(widthPx, heightPx, alphaAt))

/** Place along the rim from the edge, above it negative (mm). */
const fromEdgeMm = (s: number): number => s * ALONG_MM - CONTACT_ALONG_MM.above

/** 1 within the blade, soft to 0 at the picture's sides. @param t across, 0 to 1 @param widthMm of the blade */
const withinBlade = (t: number, widthMm: number, softMm: number): number => {
  const outMm = Math.abs(t - 0.5) * (widthMm + 2 * CONTACT_ACROSS_MM) - widthMm / 2
  const near = Math.min(Math.max(0.5 - outMm / (2 * softMm), 0), 1)
  return near * near * (3 - 2 * near)
}

/** Dark where blade and rim all but meet; under the blade it widens and fades with the gap, below the edge it is soon gone. */
export const contactShade = (widthMm: number): DataTexture =>
  veil(128, 64, (s, t) => {
    const mm = fromEdgeMm(s)
    const close = mm < 0 ? 0.72 * Math.exp(mm / 30) : 0.6 * Math.exp(-((mm / 2.4) ** 2))
    const wide = mm < 0 ? 0 : 0.24 * Math.exp(-((mm / 10) ** 2))
    return close * withinBlade(t, widthMm, 5 - 0.2 * Math.min(mm, 0)) + wide * withinBlade(t, widthMm, 10)
  })

/** Water gathered in the corner between edge and rim, a thin bright line. */
export const meniscusLine = (widthMm: number): DataTexture =>
  veil(256, 64, (s, t) => 0.34 * Math.exp(-(((fromEdgeMm(s) - 0.9) / 0.45) ** 2)) * withinBlade(t, widthMm, 1.5))

/** Dark close under the clamp, gone towards the edge; the light comes from the right, where it begins a little later. */
export const clampShade = (): DataTexture =>
  veil(64, 32, (s, t) => {
    const under = Math.min(Math.max(t + 0.35 * Math.max(s - 0.86, 0) * -7, 0), 1)
    return 0.62 * under * under
  })

/** Smooth noise from a table, wrapping round. */
const ripples = (columns: number, rows: number, seed: number): ((s: number, t: number) => number) => {
  const next = grainFrom(seed)
  const table = Float32Array.from({ length: columns * rows }, next)
  return (s, t) => {
    const [x, y] = [s * columns, t * rows]
    const [i, j] = [Math.floor(x), Math.floor(y)]
    const at = (a: number, b: number): number => table[(b % rows) * columns + (a % columns)] as number
    const ease = (p: number): number => p * p * (3 - 2 * p)
    const [p, q] = [ease(x - i), ease(y - j)]
    const low = at(i, j) * (1 - p) + at(i + 1, j) * p
    return low * (1 - q) + (at(i, j + 1) * (1 - p) + at(i + 1, j + 1) * p) * q
  }
}

/** Where round the covered part the lights are mirrored, how wide, how bright: the key, and the narrow strip above. */
const glints = [
  { at: 0.56, width: 0.1, light: 0.5 },
  { at: 0.55, width: 0.03, light: 0.5 },
  { at: 0.3, width: 0.06, light: 0.45 },
] as const
/** Films of water drawn out along the rim: how many along and across the covered part, and how far they shift a glint. */
const FILM = { along: 5, across: 34, shift: 0.05 } as const
/** Grains that stand out of the film, along and across. */
const GRAINS = { along: 190, across: 128 } as const

const SHEEN = { widthPx: 384, heightPx: 256 } as const

/** Opacity of the film, as a picture. */
export const sheenData = onceMade(() => {
  const film = ripples(FILM.along, FILM.across, 41)
  const grains = ripples(GRAINS.along, GRAINS.across, 43)
  return veilData(SHEEN.widthPx, SHEEN.heightPx, (s, t) => {
    let light = 0
    const shifted = s + FILM.shift * (film(s, t) - 0.5)
    for (const glint of glints) light += glint.light * Math.exp(-(((shifted - glint.at) / glint.width) ** 2))
    // Water stands a little thicker along both corners of the rim.
    const corner = 1 + 0.5 * Math.exp(-((Math.min(t, 1 - t) / 0.03) ** 2))
    return corner * light * (0.55 + 0.3 * film(s, t)) * (0.55 + 0.8 * grains(s, t))
  })
})

/** Light on a film of water that a turning rim carries: glints that the film draws out and single grains break. */
export const wetSheen = (): DataTexture => {
  const texture = veilOf(SHEEN.widthPx, SHEEN.heightPx, sheenData())
  texture.wrapS = RepeatWrapping
  return texture
}

import { DataTexture, LinearFilter, LinearMipmapLinearFilter, RepeatWrapping, RGBAFormat, SRGBColorSpace } from 'three'

/** Lehmer's generator with a fixed seed: the same steel and stone on every machine. */
export const grainFrom = (seed: number): (() => number) => {
  let state = seed
  return () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

interface Tile {
  readonly widthPx: number
  readonly heightPx: number
  /** Millimetres that one tile covers. */
  readonly widthMm: number
  readonly heightMm: number
}

const textureOf = (tile: Tile, shade: Float32Array, colour: boolean): DataTexture => {
  const data = new Uint8Array(4 * shade.length)
  shade.forEach((value, at) => {
    const byte = Math.round(255 * Math.min(1, Math.max(0, value)))
    data.set([byte, byte, byte, 255], 4 * at)
  })
  const texture = new DataTexture(data, tile.widthPx, tile.heightPx, RGBAFormat)
  texture.wrapS = RepeatWrapping
  texture.wrapT = RepeatWrapping
  texture.magFilter = LinearFilter
  texture.minFilter = LinearMipmapLinearFilter
  texture.generateMipmaps = true
  texture.repeat.set(1 / tile.widthMm, 1 / tile.heightMm)
  if (colour) texture.colorSpace = SRGBColorSpace
  texture.needsUpdate = true
  return texture
}

/** Long strokes of many lengths along the height, wrapping round. */
const strokes = ({ widthPx, heightPx }: Tile, seed: number, depth: number): Float32Array => {
  const next = grainFrom(seed)
  const shade = new Float32Array(widthPx * heightPx).fill(0)
  for (let stroke = 0; stroke < widthPx * 14; stroke++) {
    const column = Math.floor(next() * widthPx)
    const from = Math.floor(next() * heightPx)
    const length = Math.floor((0.1 + 0.7 * next()) * heightPx)
    const strength = (next() - 0.5) * depth
    for (let k = 0; k < length; k++) {
      const fade = Math.sin((Math.PI * k) / length)
      const at = ((from + k) % heightPx) * widthPx + column
      shade[at] = (shade[at] as number) + strength * fade
    }
  }
  return shade
}

const STEEL_TILE: Tile = { widthPx: 128, heightPx: 128, widthMm: 40, heightMm: 120 }

/** Brushed steel, strokes along the blade: one texture for colour, one for roughness. */
export const brushedSteel = () => {
  const shade = strokes(STEEL_TILE, 7, 0.16)
  return {
    colour: textureOf(
      STEEL_TILE,
      shade.map((value) => 0.9 + 0.55 * value),
      true,
    ),
    roughness: textureOf(
      STEEL_TILE,
      shade.map((value) => 0.72 + value),
      false,
    ),
  }
}

const STONE_TILE: Tile = { widthPx: 256, heightPx: 256, widthMm: 1, heightMm: 1 }

/** Grain and pores of a grinding wheel. @param contrast of the grain */
export const wheelGrain = (seed: number, contrast: number): DataTexture => {
  const next = grainFrom(seed)
  const { widthPx, heightPx } = STONE_TILE
  const shade = Float32Array.from({ length: widthPx * heightPx }, () => 0.8 + contrast * (next() - 0.5))
  for (let pore = 0; pore < 2600; pore++) {
    const at = Math.floor(next() * shade.length)
    shade[at] = 0.25
    shade[(at + 1) % shade.length] = 0.45
  }
  return textureOf(STONE_TILE, shade, true)
}

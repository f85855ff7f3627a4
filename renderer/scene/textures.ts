import { DataTexture, LinearFilter, LinearMipmapLinearFilter, RepeatWrapping, RGBAFormat, SRGBColorSpace } from 'three'

/** Lehmer's generator with a fixed seed: the same steel and stone on every machine. */
export const grainFrom = (seed: number): (() => number) => {
  let state = seed
  return () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

/** What is the same in every scene is made with the first, and kept: opening the model again makes nothing anew. */
export const onceMade = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | null = null
  return () => {
    made ??= { value: make() }
    return made.value
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
  const data = new Uint8ClampedArray(4 * shade.length).fill(255)
  for (let at = 0; at < shade.length; at++) {
    const value = 255 * (shade[at] as number)
    data[4 * at] = value
    data[4 * at + 1] = value
    data[4 * at + 2] = value
  }
  const texture = new DataTexture(new Uint8Array(data.buffer), tile.widthPx, tile.heightPx, RGBAFormat)
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

/** A tile of brush strokes covers this much of the blade (mm, across and along). */
export const BRUSH_TILE_MM = [40, 120] as const
const STEEL_TILE: Tile = { widthPx: 256, heightPx: 128, widthMm: BRUSH_TILE_MM[0], heightMm: BRUSH_TILE_MM[1] }

/** Strokes of one kind: so many a column, so wide (px), so strong at most. */
interface Strokes {
  readonly perColumn: number
  readonly widePx: number
  readonly depth: number
}

/** Fine ones everywhere, and a few broad ones that are still seen from afar. */
const kinds: readonly Strokes[] = [
  { perColumn: 9, widePx: 1, depth: 0.34 },
  { perColumn: 1.6, widePx: 4, depth: 0.26 },
  { perColumn: 0.3, widePx: 10, depth: 0.15 },
]

/** Long strokes of many lengths along the height, wrapping round; 0 in the middle of their depth. */
const strokes = ({ widthPx, heightPx }: Tile, seed: number): Float32Array => {
  const next = grainFrom(seed)
  const shade = new Float32Array(widthPx * heightPx)
  const draw = ({ widePx, depth }: Strokes): void => {
    const column = Math.floor(next() * widthPx)
    const from = Math.floor(next() * heightPx)
    const length = Math.floor((0.15 + 0.8 * next()) * heightPx)
    const strength = (next() - 0.5) * depth
    for (let k = 0; k < length; k++) {
      const row = ((from + k) % heightPx) * widthPx
      const now = strength * Math.sin((Math.PI * k) / length)
      for (let wide = 0; wide < widePx; wide++) {
        const at = row + ((column + wide) % widthPx)
        shade[at] = (shade[at] as number) + now * Math.sin((Math.PI * (wide + 0.5)) / widePx)
      }
    }
  }
  for (const kind of kinds) for (let k = 0; k < kind.perColumn * widthPx; k++) draw(kind)
  return shade
}

/** Strokes of the steel, 0 in the middle of their depth. */
export const steelStrokes = onceMade(() => strokes(STEEL_TILE, 7))

/** Brushed steel, strokes along the blade: one texture for colour, one for roughness. */
export const brushedSteel = () => {
  const shade = steelStrokes()
  return {
    colour: textureOf(
      STEEL_TILE,
      shade.map((value) => 0.9 + 0.3 * value),
      true,
    ),
    roughness: textureOf(
      STEEL_TILE,
      shade.map((value) => 0.72 + 0.5 * value),
      false,
    ),
  }
}

/** Strokes as figures, 0.5 in the middle: red their depth, green the lean of their flanks across the blade. */
export const brushStrokes = (): DataTexture => {
  const shade = steelStrokes()
  const texture = textureOf(
    STEEL_TILE,
    shade.map((value) => 0.5 + 0.5 * value),
    false,
  )
  const data = texture.image.data as Uint8Array
  const { widthPx } = STEEL_TILE
  shade.forEach((value, at) => {
    const beside = at % widthPx === widthPx - 1 ? at + 1 - widthPx : at + 1
    const lean = 0.5 + 0.5 * ((shade[beside] as number) - value)
    data[4 * at + 1] = Math.round(255 * Math.min(Math.max(lean, 0), 1))
  })
  return texture
}

const STONE_TILE: Tile = { widthPx: 256, heightPx: 256, widthMm: 1, heightMm: 1 }

/** Grain and pores of a grinding wheel. @param contrast of the grain */
const grain = (seed: number, contrast: number): Float32Array => {
  const next = grainFrom(seed)
  const { widthPx, heightPx } = STONE_TILE
  const shade = new Float32Array(widthPx * heightPx)
  for (let at = 0; at < shade.length; at++) shade[at] = 0.8 + contrast * (next() - 0.5)
  for (let pore = 0; pore < 2600; pore++) {
    const at = Math.floor(next() * shade.length)
    shade[at] = 0.25
    shade[(at + 1) % shade.length] = 0.45
  }
  return shade
}

/** The stone's grain on its rim, and on its sides. */
export const rimGrain = onceMade(() => grain(11, 0.34))
export const sideGrain = onceMade(() => grain(23, 0.4))

/** A tile of stone. */
export const stone = (shade: Float32Array): DataTexture => textureOf(STONE_TILE, shade, true)

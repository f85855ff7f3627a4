import { DataTexture, LinearFilter, RGBAFormat, SRGBColorSpace } from 'three'

/**
 * What steel mirrors, painted on a ball once: for renderers on the processor, where a true reflection of the painted
 * surroundings would cost tens of milliseconds a picture. Fixed to the view instead of the room; otherwise the same lights.
 */
const SIZE_PX = 128

/** A soft light: where it stands as seen by the camera (x right, y up, z to the eye), how wide, how bright. */
interface Glow {
  readonly at: readonly [number, number, number]
  /** Cosine of the angle to its middle at which it has faded. */
  readonly fade: number
  readonly light: number
}

const glows: readonly Glow[] = [
  { at: [0.55, 0.62, 0.56], fade: 0.45, light: 1.15 },
  { at: [-0.1, 0.85, -0.5], fade: 0.6, light: 1.5 },
  { at: [-0.92, 0.2, 0.33], fade: 0.7, light: 0.5 },
  { at: [0.1, -0.95, 0.2], fade: 0.35, light: 0.4 },
]

/** What a turned and polished bar shows of the same lights: narrow, hard against a dark shell. */
const polishedGlows: readonly Glow[] = [
  { at: [0.35, 0.86, 0.37], fade: 0.82, light: 1.3 },
  { at: [0.1, 0.3, 0.95], fade: 0.93, light: 0.5 },
  { at: [-0.1, 0.4, -0.9], fade: 0.7, light: 0.7 },
  { at: [0.1, -0.9, -0.3], fade: 0.6, light: 0.35 },
]

/** Light of the shell from ground to sky, as in environment.ts. */
const shells = { light: [0.1, 0.42], dark: [0.04, 0.26] } as const

const lightFrom = (x: number, y: number, z: number, dark: boolean, polished: boolean): number => {
  const [low, high] = shells[dark ? 'dark' : 'light']
  let light = low + (high - low) * (0.5 + 0.5 * y)
  for (const { at, fade, light: most } of polished ? polishedGlows : glows) {
    const near = Math.min(Math.max((x * at[0] + y * at[1] + z * at[2] - fade) / (1 - fade), 0), 1)
    light += most * near * near * (3 - 2 * near)
  }
  return light
}

/** @returns the ball; the materials that use it free it */
export const paintMatcap = (dark: boolean, polished = false): DataTexture => {
  const data = new Uint8Array(4 * SIZE_PX * SIZE_PX)
  for (let at = 0; at < SIZE_PX * SIZE_PX; at++) {
    const nx = (2 * ((at % SIZE_PX) + 0.5)) / SIZE_PX - 1
    const ny = (2 * (Math.floor(at / SIZE_PX) + 0.5)) / SIZE_PX - 1
    const nz = Math.sqrt(Math.max(1 - nx * nx - ny * ny, 0))
    // The eye's ray (0, 0, -1) mirrored at the normal.
    const light = lightFrom(2 * nz * nx, 2 * nz * ny, 2 * nz * nz - 1, dark, polished)
    const byte = Math.round(255 * Math.min(light, 1) ** (1 / 2.2))
    data.set([byte, byte, byte, 255], 4 * at)
  }
  const texture = new DataTexture(data, SIZE_PX, SIZE_PX, RGBAFormat)
  texture.magFilter = LinearFilter
  texture.minFilter = LinearFilter
  texture.colorSpace = SRGBColorSpace
  texture.needsUpdate = true
  return texture
}

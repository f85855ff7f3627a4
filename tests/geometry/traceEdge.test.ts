import { describe, expect, it } from 'vitest'
import { readPoints } from '../../geometry/measurePoints.ts'
import { type GreyPicture, type TraceMarks, traceEdge } from '../../geometry/traceEdge.ts'
import { seeded } from '../support/seeded.ts'
import { found } from './example.ts'

const WIDTH_MM = 57
/** A picture 1,200 px wide, 1,000 px of it the iron: 57 um a pixel. */
const PICTURE = { widthPx: 1200, heightPx: 400 }
const PIXEL_MM = WIDTH_MM / 1000

interface Scene {
  /** How far the edge stands over the line through its corners (px). */
  readonly risePx: (share: number) => number
  readonly tilt: number
  readonly noise: number
  readonly dark: number
  readonly light: number
}

/** Dark iron below light, the step blurred over some two pixels by averaging a fine raster. */
const pictureOf = ({ risePx, tilt, noise, dark, light }: Scene): GreyPicture => {
  const random = seeded(5)
  const { widthPx, heightPx } = PICTURE
  const grey = new Uint8Array(widthPx * heightPx)
  for (let x = 0; x < widthPx; x++) {
    const share = (x - 100) / 1000
    const edgeY = 250 + tilt * (x - 100) - (share < 0 || share > 1 ? 0 : risePx(share))
    for (let y = 0; y < heightPx; y++) {
      const below = Math.min(1, Math.max(0, (y + 1 - edgeY) / 2))
      grey[y * widthPx + x] = Math.round(light + (dark - light) * below + noise * (random() - 0.5))
    }
  }
  return { ...PICTURE, grey }
}

const marks = (tilt: number): TraceMarks => ({
  left: [100, 250],
  right: [1100, 250 + 1000 * tilt],
  iron: 'below',
  widthMm: WIDTH_MM,
})
const scene = (changes: Partial<Scene> = {}): Scene => ({
  risePx: (share) => (4 * 0.5 * share * (1 - share)) / PIXEL_MM,
  tilt: 0,
  noise: 0,
  dark: 40,
  light: 210,
  ...changes,
})

describe('an edge in a photograph', () => {
  it.each([
    ['clean', scene()],
    ['with noise', scene({ noise: 30 })],
    ['tilted by 2 degrees', scene({ tilt: 0.035 })],
    ['faint', scene({ dark: 120, light: 160, noise: 6 })],
  ])('an arc of 0.5 mm is found to a few micrometres: %s', (_, given) => {
    const traced = found(traceEdge(pictureOf(given), marks(given.tilt)))
    const { edge, residualSdMm } = found(readPoints(traced.points, WIDTH_MM, 0.01))
    expect(edge.shape).toBe('arc')
    // A tenth of a pixel is 5.7 um.
    expect(Math.abs(edge.reliefMm - 0.5)).toBeLessThan(0.006)
    expect(residualSdMm ?? 1).toBeLessThan(0.02)
    expect(traced.pixelMm / PIXEL_MM).toBeCloseTo(1, 2)
  })

  it('dust on the edge is dropped, not traced', () => {
    const picture = pictureOf(scene())
    for (let x = 500; x < 508; x++)
      for (let y = 190; y < 240; y++) (picture.grey as Uint8Array)[y * PICTURE.widthPx + x] = 0
    const traced = found(traceEdge(picture, marks(0)))
    expect(traced.dropped).toBeGreaterThan(2)
    expect(found(readPoints(traced.points, WIDTH_MM, 0.01)).edge.reliefMm).toBeCloseTo(0.5, 1)
  })

  it('a hollow edge reads as heights the other way round: below and above change the sign', () => {
    const upsideDown = found(traceEdge(pictureOf(scene()), { ...marks(0), iron: 'above' }))
    expect(readPoints(upsideDown.points, WIDTH_MM, 0.01).ok).toBe(false)
  })

  it.each([
    ['nothing but grey', scene({ dark: 128, light: 128 }), 'traceNoEdge'],
    ['noise alone', scene({ dark: 128, light: 128, noise: 14 }), 'traceNoEdge'],
  ])('%s shows no edge', (_, given, code) => {
    const traced = traceEdge(pictureOf(given), marks(0))
    expect(traced.ok ? null : traced.problems[0]?.code).toBe(code)
  })

  it('corners marked on one spot, or beyond the picture, are refused', () => {
    const codeOf = (changes: Partial<TraceMarks>) => {
      const traced = traceEdge(pictureOf(scene()), { ...marks(0), ...changes })
      return traced.ok ? null : traced.problems[0]?.code
    }
    expect(codeOf({ right: [130, 250] })).toBe('traceMarks')
    expect(codeOf({ left: [-900, 250] })).toBe('traceNoEdge')
  })
})

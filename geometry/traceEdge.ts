import { median } from './fit.ts'
import type { GapPoint } from './measurePoints.ts'
import { MOST_KEPT } from './profileText.ts'
import { failed, ok, problem, type Result } from './result.ts'

/** A photograph, or the part of it that matters, in grey; row by row from its upper left corner. */
export interface GreyPicture {
  readonly widthPx: number
  readonly heightPx: number
  readonly grey: Uint8Array | Uint8ClampedArray
}

export type PicturePoint = readonly [xPx: number, yPx: number]

/** The edge's two corners as marked, which give scale and baseline, and where the iron lies. */
export interface TraceMarks {
  readonly left: PicturePoint
  readonly right: PicturePoint
  /** Side of the line from left to right corner on which the iron lies, the picture upright. */
  readonly iron: 'below' | 'above'
  readonly widthMm: number
}

/** An edge found in a photograph. */
export interface TracedEdge {
  /** u from the middle, left first; gap as under a straightedge on the foremost point. */
  readonly points: readonly GapPoint[]
  /** The same in the picture, to be drawn over it. */
  readonly line: readonly PicturePoint[]
  /** Columns looked at, and of them the ones that were dropped. */
  readonly columns: number
  readonly dropped: number
  /** One pixel of the picture at the edge. */
  readonly pixelMm: number
}

/** Looked for within this share of the chord to either side of the line through the corners. */
const BAND_SHARE = 0.08
const LEAST_BAND_PX = 12
/** Shorter chords than this are no photograph of an edge (px). */
const LEAST_CHORD_PX = 100
/** A step of grey smaller than this is no edge but the picture's noise. */
const LEAST_CONTRAST = 12
/** Half the width over which a step is taken: as sharp as a lens draws (px). */
const STEP_PX = 3
/** Columns whose neighbours' middle value they miss by more than this many typical deviations were drawn away by something else. */
const OUTLIER_DEVIATIONS = 6
/** No column is an outlier that is nearer to its neighbours than this (px). */
const NEAR_PX = 0.75
const NEIGHBOURS = 7
/** Fewer good columns than this share are no edge. */
const LEAST_GOOD_SHARE = 0.6

/** Grey between pixels, bilinear; null beyond the picture. */
const greyAt = ({ widthPx, heightPx, grey }: GreyPicture, x: number, y: number): number | null => {
  const [i, j] = [Math.floor(x), Math.floor(y)]
  if (i < 0 || j < 0 || i + 1 >= widthPx || j + 1 >= heightPx) return null
  const at = j * widthPx + i
  const [a, b] = [x - i, y - j]
  const [p, q, r, s] = [grey[at], grey[at + 1], grey[at + widthPx], grey[at + widthPx + 1]] as [
    number,
    number,
    number,
    number,
  ]
  return (p * (1 - a) + q * a) * (1 - b) + (r * (1 - a) + s * a) * b
}

/** Grey along the normal through a place, one sample a pixel; null where it leaves the picture. */
const across = (
  picture: GreyPicture,
  [x, y]: PicturePoint,
  [nx, ny]: PicturePoint,
  bandPx: number,
): number[] | null => {
  const samples: number[] = []
  for (let k = -bandPx; k <= bandPx; k++) {
    const grey = greyAt(picture, x + k * nx, y + k * ny)
    if (grey === null) return null
    samples.push(grey)
  }
  return samples
}

/** Where grey steps most, to a fraction of a pixel by the parabola through the steepest and its neighbours; null: no step. */
const stepOf = (samples: readonly number[]): number | null => {
  const step = (k: number): number => {
    let sum = 0
    for (let d = 1; d <= STEP_PX; d++) sum += (samples[k + d] as number) - (samples[k - d] as number)
    return Math.abs(sum) / STEP_PX
  }
  let best = -1
  let steepest = LEAST_CONTRAST
  for (let k = STEP_PX; k < samples.length - STEP_PX; k++) {
    const here = step(k)
    if (here > steepest) [best, steepest] = [k, here]
  }
  if (best <= STEP_PX || best >= samples.length - STEP_PX - 1) return null
  const [before, after] = [step(best - 1), step(best + 1)]
  const bend = before - 2 * steepest + after
  return best + (bend === 0 ? 0 : (before - after) / (2 * bend))
}

interface Column {
  readonly alongPx: number
  /** From the line through the corners, + away from the iron. */
  readonly outPx: number
}

/** Columns whose step belongs to something else (a chip of dust, the light's edge) stand apart from their neighbours. */
const withoutOutliers = (columns: readonly Column[]): readonly Column[] => {
  const offs = columns.map(({ outPx }, i) => {
    const around = columns.slice(Math.max(0, i - NEIGHBOURS), i + NEIGHBOURS + 1).map((each) => each.outPx)
    return Math.abs(outPx - median(around))
  })
  const most = Math.max(NEAR_PX, OUTLIER_DEVIATIONS * median(offs))
  return columns.filter((_, i) => (offs[i] as number) <= most)
}

/**
 * Finds an edge in a photograph: along columns square to the line through its corners, where the grey steps most. What the lens
 * bends and what perspective shortens is left out: the camera looks square at the middle of the edge.
 * @returns `traceMarks` for corners too near or beyond the picture, `traceNoEdge` where too few columns show a step
 */
export const traceEdge = (picture: GreyPicture, { left, right, iron, widthMm }: TraceMarks): Result<TracedEdge> => {
  const [dx, dy] = [right[0] - left[0], right[1] - left[1]]
  const chordPx = Math.sqrt(dx * dx + dy * dy)
  if (!(chordPx >= LEAST_CHORD_PX)) return failed(problem('traceMarks', 'photograph', { leastPx: LEAST_CHORD_PX }))
  const along: PicturePoint = [dx / chordPx, dy / chordPx]
  // Away from the iron: up in the picture when it lies below.
  const out: PicturePoint = iron === 'below' ? [along[1], -along[0]] : [-along[1], along[0]]
  const bandPx = Math.max(LEAST_BAND_PX, Math.round(BAND_SHARE * chordPx))
  const count = Math.min(MOST_KEPT, Math.floor(chordPx))
  const found: Column[] = []
  for (let k = 0; k < count; k++) {
    const alongPx = (k / (count - 1)) * chordPx
    const place: PicturePoint = [left[0] + alongPx * along[0], left[1] + alongPx * along[1]]
    const samples = across(picture, place, out, bandPx)
    const step = samples && stepOf(samples)
    if (step !== null) found.push({ alongPx, outPx: step - bandPx })
  }
  const good = withoutOutliers(found)
  if (good.length < LEAST_GOOD_SHARE * count)
    return failed(problem('traceNoEdge', 'photograph', { found: good.length, columns: count }))
  const pixelMm = widthMm / chordPx
  const foremost = good.reduce((most, { outPx }) => Math.max(most, outPx), Number.NEGATIVE_INFINITY)
  return ok({
    points: good.map(({ alongPx, outPx }) => ({
      uMm: Math.min(widthMm / 2, Math.max(-widthMm / 2, alongPx * pixelMm - widthMm / 2)),
      gapMm: (foremost - outPx) * pixelMm,
    })),
    line: good.map(({ alongPx, outPx }) => [
      left[0] + alongPx * along[0] + outPx * out[0],
      left[1] + alongPx * along[1] + outPx * out[1],
    ]),
    columns: count,
    dropped: count - good.length,
    pixelMm,
  })
}

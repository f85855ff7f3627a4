import { shownPlayError } from '../../geometry/calibrated.ts'
import type { Learnt, LearntGrind } from '../../main/contract/learnt.ts'
import type { Place } from '../glass/glassLayout.ts'

/** A measured grind in the plot: free play that was set, against free play that its edge shows by the model. */
export interface Spot {
  readonly grind: LearntGrind
  readonly at: Place
}

/** The plot laid out (px). Both axes are free play in mm, so the model is the line of equal figures. */
export interface PlotLayout {
  readonly widthPx: number
  readonly heightPx: number
  readonly model: readonly [Place, Place]
  readonly calibrated: readonly [Place, Place]
  /** Two standard errors to either side of the calibrated line. */
  readonly band: readonly Place[]
  readonly spots: readonly Spot[]
  /** On the line of no relief, from where the calibrated line meets it to 0: the lash, with the right end of its name. */
  readonly lash: { readonly fromPx: number; readonly toPx: number; readonly nameEndPx: number }
  readonly zero: Place
  readonly ticks: readonly { readonly mm: number; readonly xPx: number; readonly yPx: number }[]
}

const LEFT_PX = 56
const RIGHT_PX = 24
const TOP_PX = 16
const BOTTOM_PX = 48
/** Room to the left of 0, where the lash shows. */
const BELOW_SHARE = 0.12
/** Least length of the axes (mm): a turn of a fine screw. */
const LEAST_MM = 0.8
const HEADROOM = 1.1
/** A great lash still has some paper behind it. */
const LASH_ROOM = 1.2
/** Room for the name of the lash from the left border (px). */
const LASH_NAME_PX = 117
const LASH_NAME_GAP_PX = 8
const BAND_POINTS = 24
const BAND_ERRORS = 2

/** @returns free play that a relief stands for by the model */
const shownPlayMm = ({ measuredReliefMm, modelReliefMm, freePlayMm }: LearntGrind): number =>
  modelReliefMm === 0 ? 0 : (measuredReliefMm * freePlayMm) / modelReliefMm

/** @returns the layout in a room */
export const plotLayout = ({ grinds, calibration }: Learnt, widthPx: number, heightPx: number): PlotLayout => {
  const { scale, lashMm } = calibration
  const most = HEADROOM * Math.max(LEAST_MM, ...grinds.flatMap((grind) => [grind.freePlayMm, shownPlayMm(grind)]))
  const least = Math.min(-BELOW_SHARE * most, -LASH_ROOM * lashMm)
  const xPx = (mm: number) => LEFT_PX + ((mm - least) / (most - least)) * (widthPx - LEFT_PX - RIGHT_PX)
  const yPx = (mm: number) => heightPx - BOTTOM_PX - ((mm - least) / (most - least)) * (heightPx - TOP_PX - BOTTOM_PX)
  const line = (mm: number): number => scale * (mm + lashMm)
  const error = (mm: number): number => BAND_ERRORS * shownPlayError(calibration, mm)
  const steps = Array.from({ length: BAND_POINTS + 1 }, (_, k) => (k * most) / BAND_POINTS)
  const edge = (sign: number) => steps.map((mm): Place => [xPx(mm), yPx(line(mm) + sign * error(mm))])
  const tickMm = most > 2 ? 1 : most > 1 ? 0.5 : 0.2
  return {
    widthPx,
    heightPx,
    model: [
      [xPx(0), yPx(0)],
      [xPx(most), yPx(most)],
    ],
    calibrated: [
      [xPx(-lashMm), yPx(0)],
      [xPx(most), yPx(line(most))],
    ],
    band: [...edge(1), ...edge(-1).reverse()],
    spots: grinds.map((grind) => ({ grind, at: [xPx(grind.freePlayMm), yPx(shownPlayMm(grind))] })),
    lash: { fromPx: xPx(-lashMm), toPx: xPx(0), nameEndPx: Math.max(xPx(0) - LASH_NAME_GAP_PX, LASH_NAME_PX) },
    zero: [xPx(0), yPx(0)],
    ticks: Array.from({ length: Math.floor(most / tickMm) + 1 }, (_, k) => ({
      mm: k * tickMm,
      xPx: xPx(k * tickMm),
      yPx: yPx(k * tickMm),
    })),
  }
}

import type { Calibration } from './calibrated.ts'
import { type Fit, linearFit } from './fit.ts'
import { ok, type Result } from './result.ts'

/** One reshaping, measured as ground. */
export interface Grind {
  readonly freePlayLeftMm: number
  readonly freePlayRightMm: number
  /** What the model said, uncalibrated. */
  readonly modelReliefMm: number
  readonly measuredReliefMm: number
  /** ISO date. */
  readonly date: string
  /** Left out by the user. */
  readonly excluded?: boolean
}

/** A calibration with what it rests on; `residualsMm` and `outliers` follow the history entry by entry. */
export interface Learnt extends Calibration {
  readonly residualsMm: readonly number[]
  /** Far from the others: left out of the figures, shown. */
  readonly outliers: readonly boolean[]
  /** `contradict`: they scatter too far, or split into two camps; nothing is to be corrected by them. */
  readonly code: 'tooFewGrinds' | 'contradict' | 'learnt'
}

/** Below this the model carries more of the answer than the grinds do. */
export const FEWEST_GRINDS = 3
/** Prior, 1 sd: what moves the camber unknown to the model (pivot tilt 4 % a degree, crown, roll) comes to some 15 %. */
const PRIOR_SCALE_SD = 0.15
/** Prior, 1 sd (mm of free play): an eighth of a turn at pitch 0.8, where counting from the first touch goes wrong. */
const PRIOR_LASH_SD_MM = 0.1
/** Prior spread of a grind (mm), a leaf's step, and how many spare grinds it is worth. */
const PRIOR_SPREAD_MM = 0.02
const PRIOR_SPREAD_WEIGHT = 2
/** Standard deviations off at which a grind is an outlier (Iglewicz and Hoaglin 1993: 3.5). */
const OUTLIER_SDS = 3.5

/** A spread of this many leaf steps is more than leaves and hand explain: a hundred to one with three grinds, and more with more. */
const CONTRADICTING_SPREADS = 2

/** Mean of both sides (mm). */
export const freePlayOf = ({ freePlayLeftMm, freePlayRightMm }: Grind): number => (freePlayLeftMm + freePlayRightMm) / 2
const usable = (grind: Grind): boolean => !grind.excluded && freePlayOf(grind) > 0 && grind.modelReliefMm > 0

interface Values {
  readonly scale: number
  /** scale x lash. */
  readonly lift: number
}

const residualOf = (grind: Grind, { scale, lift }: Values): number =>
  grind.measuredReliefMm - grind.modelReliefMm * (scale + lift / freePlayOf(grind))

/** Rows in units of the spread, the prior as two readings more: scale 1, lash 0. */
const weighted = (grinds: readonly Grind[], spreadMm: number) =>
  linearFit(
    [
      ...grinds.map((g) => [g.modelReliefMm / spreadMm, g.modelReliefMm / freePlayOf(g) / spreadMm]),
      [1 / PRIOR_SCALE_SD, 0],
      [0, 1 / PRIOR_LASH_SD_MM],
    ],
    [...grinds.map((g) => g.measuredReliefMm / spreadMm), 1 / PRIOR_SCALE_SD, 0],
  )

const valuesOf = (fit: { readonly values: readonly number[] }): Values => ({
  scale: fit.values[0] as number,
  lift: fit.values[1] as number,
})

/** Errors of scale and lash from those of scale and lift: lash = lift / scale, straightened about the values found. */
const errorsOf = ({ scale, lift }: Values, covariance: Fit['unitCovariance']) => {
  const [[ofScale, ofBoth], [, ofLift]] = covariance as [[number, number], [number, number]]
  const lashMm = lift / scale
  const scaleSe = Math.sqrt(ofScale)
  const lashSe = Math.sqrt(ofLift - 2 * lashMm * ofBoth + lashMm * lashMm * ofScale) / scale
  return { scaleSe, lashSe, scaleLashCorrelation: (ofBoth - lashMm * ofScale) / scale / (scaleSe * lashSe) }
}

/** Spread from residuals, pulled to the prior's while grinds are few. */
const spreadOf = (residuals: readonly number[]): number => {
  const squares = residuals.reduce((total, r) => total + r * r, 0)
  const spare = Math.max(0, residuals.length - 2)
  return Math.sqrt((PRIOR_SPREAD_WEIGHT * PRIOR_SPREAD_MM ** 2 + squares) / (PRIOR_SPREAD_WEIGHT + spare))
}

/** How far a grind lies off a fit, in standard deviations of what the fit leaves open there and of one grind. */
const offBy = (grind: Grind, fit: Fit, spreadMm: number): number => {
  const row = [grind.modelReliefMm, grind.modelReliefMm / freePlayOf(grind)]
  const open = row.reduce(
    (total, a, i) => total + row.reduce((sum, b, j) => sum + a * b * (fit.unitCovariance[i]?.[j] as number), 0),
    0,
  )
  return Math.abs(residualOf(grind, valuesOf(fit))) / Math.sqrt(spreadMm * spreadMm + open)
}

/**
 * Outliers by a forward search (Atkinson and Riani, "Robust Diagnostic Regression Analysis", 2000): from the model alone, grinds are
 * taken in one by one, each time the one that lies nearest to the fit of those already in; what is still far off when all the
 * others are in does not belong to them. Where most would be left out, it is the model that is wrong, and none is.
 */
const outliersOf = (history: readonly Grind[]): Result<readonly boolean[]> => {
  const rest = history.filter(usable)
  const most = rest.length / 2
  const taken: Grind[] = []
  while (rest.length > 0) {
    const fit = weighted(taken, PRIOR_SPREAD_MM)
    if (!fit.ok) return fit
    const spreadMm = spreadOf(taken.map((grind) => residualOf(grind, valuesOf(fit.value))))
    const off = (grind: Grind) => offBy(grind, fit.value, spreadMm)
    const nearest = rest.reduce((a, b) => (off(b) < off(a) ? b : a))
    if (off(nearest) > OUTLIER_SDS) break
    taken.push(nearest)
    rest.splice(rest.indexOf(nearest), 1)
  }
  return ok(history.map((grind) => rest.length <= most && rest.includes(grind)))
}

/**
 * Whether grinds say too different things to correct by: their spread is beyond what leaves explain and beyond the doubt about
 * the model itself, or as many were left out as used, so that which camp is right cannot be told.
 */
const contradicting = (used: readonly Grind[], outliers: number, repeatabilityMm: number): boolean => {
  const meanMm = used.reduce((total, grind) => total + grind.modelReliefMm, 0) / used.length
  const mostMm = Math.max(CONTRADICTING_SPREADS * PRIOR_SPREAD_MM, PRIOR_SCALE_SD * meanMm)
  return outliers >= used.length || repeatabilityMm > mostMm
}

const codeOf = (used: readonly Grind[], outliers: number, repeatabilityMm: number): Learnt['code'] => {
  if (used.length + outliers < FEWEST_GRINDS) return 'tooFewGrinds'
  if (contradicting(used, outliers, repeatabilityMm)) return 'contradict'
  return used.length < FEWEST_GRINDS ? 'tooFewGrinds' : 'learnt'
}

/**
 * What a fixture's history says of it: scale and lash by least squares with the model as prior, always, so that grinds all at
 * one setting, or only one, still give an answer and its doubt; the prior fades as grinds come in. Scale and lash must be
 * kept apart by different settings; until then both keep wide errors.
 */
export const calibrate = (history: readonly Grind[]): Result<Learnt> => {
  const outliers = outliersOf(history)
  if (!outliers.ok) return outliers
  const used = history.filter((grind, i) => usable(grind) && !outliers.value[i])
  const first = weighted(used, PRIOR_SPREAD_MM)
  if (!first.ok) return first
  const repeatabilityMm = spreadOf(used.map((grind) => residualOf(grind, valuesOf(first.value))))
  const fit = weighted(used, repeatabilityMm)
  if (!fit.ok) return fit
  const values = valuesOf(fit.value)
  return ok({
    scale: values.scale,
    lashMm: values.lift / values.scale,
    ...errorsOf(values, fit.value.unitCovariance),
    grinds: used.length,
    repeatabilityMm,
    residualsMm: history.map((grind) => (freePlayOf(grind) > 0 ? residualOf(grind, values) : 0)),
    outliers: outliers.value,
    code: codeOf(used, outliers.value.filter(Boolean).length, repeatabilityMm),
  })
}

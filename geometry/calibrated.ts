/** A fixture's correction: relief = ratio x model relief, ratio = scale x (free play + lash) / free play. */
export interface Calibration {
  readonly scale: number
  readonly lashMm: number
  readonly scaleSe: number
  readonly lashSe: number
  /**
   * Of the errors of scale and lash, -1 to 1. Grinds at one free play tell the ratio there well and scale and lash apart badly:
   * the two then pull against each other, near -1. Kept as a correlation, so that its range alone keeps every error real.
   */
  readonly scaleLashCorrelation: number
  /** How many stand behind it. */
  readonly grinds: number
  /** Spread of one grind about the calibration, s_r. */
  readonly repeatabilityMm: number
}

/** @returns how many times the model's relief the fixture grinds at a free play > 0 */
export const calibratedRatio = ({ scale, lashMm }: Calibration, freePlayMm: number): number =>
  scale * (1 + lashMm / freePlayMm)

/** Relief by a calibration, for a model relief at a free play > 0. */
export const calibratedRelief = (calibration: Calibration, modelReliefMm: number, freePlayMm: number): number =>
  calibratedRatio(calibration, freePlayMm) * modelReliefMm

/** Free play that gives by a calibration what the model gives at `freePlayMm`: j / scale - lash, relief being nearly proportional to it; never below 0. */
export const calibratedFreePlay = ({ scale, lashMm }: Calibration, freePlayMm: number): number =>
  Math.max(0, freePlayMm / scale - lashMm)

/**
 * Standard error (mm) of scale x (free play + lash), the free play that an edge shows by the model; defined at no free play too.
 * (a + r b)^2 + (1 - r^2) b^2 is a^2 + 2 r a b + b^2, written so that rounding cannot take it below 0.
 */
export const shownPlayError = (
  { scale, lashMm, scaleSe, lashSe, scaleLashCorrelation }: Calibration,
  freePlayMm: number,
): number => {
  const ofScale = (freePlayMm + lashMm) * scaleSe
  const ofLash = scale * lashSe
  const together = ofScale + scaleLashCorrelation * ofLash
  return Math.sqrt(together * together + (1 - scaleLashCorrelation * scaleLashCorrelation) * ofLash * ofLash)
}

/** @returns the standard error of the ratio at a free play > 0 */
export const ratioError = (calibration: Calibration, freePlayMm: number): number =>
  shownPlayError(calibration, freePlayMm) / freePlayMm

/** Standard error of the relief of the next grind: of the calibration itself, and of one grind about it. */
export const calibratedError = (calibration: Calibration, modelReliefMm: number, freePlayMm: number): number => {
  const ofRatio = modelReliefMm * ratioError(calibration, freePlayMm)
  return Math.sqrt(ofRatio * ofRatio + calibration.repeatabilityMm * calibration.repeatabilityMm)
}

/**
 * Every quantity the program knows, declared once: unit, range, default and how many decimals it deserves.
 * Forms, validation, help and cards read this table; the words for an entry stand in the text catalogue under
 * `quantity.<section>.<key>`. Keys are those of the job file, so a name means one thing everywhere.
 *
 * Ranges are the widest a workshop could mean, not advice: beyond them a figure is a slip of the pen.
 */
export type Unit =
  | 'mm'
  | 'deg'
  | 'turn'
  | 'rpm'
  | 'mPerS'
  | 'min'
  | 'N'
  | 'mm2'
  | 'mm3'
  | 'nPerMm3'
  | 'sweep'
  | 'share'
  | 'ratio'
  | 'count'
  | 'px'
  | 'perS'
  | 'degC'
  | 'day'
  | 'MB'

/** One quantity. `defaultValue` null: nobody can know it but the user, or it is found from the others. */
export interface Quantity {
  readonly unit: Unit
  readonly min: number
  readonly max: number
  readonly defaultValue: number | null
  /** Decimals shown in `unit`; typed figures keep what was typed. */
  readonly decimals: number
}

const quantity = (unit: Unit, min: number, max: number, defaultValue: number | null, decimals: number): Quantity => ({
  unit,
  min,
  max,
  defaultValue,
  decimals,
})

export const quantities = {
  blade: {
    widthMm: quantity('mm', 3, 120, null, 1),
    thicknessMm: quantity('mm', 0.5, 12, null, 1),
    seatAngleDeg: quantity('deg', 5, 90, null, 0),
    currentBevelDeg: quantity('deg', 10, 70, null, 1),
    honedBevelDeg: quantity('deg', 10, 75, null, 1),
    backBevelDeg: quantity('deg', 0, 30, 0, 1),
    capSetbackMm: quantity('mm', 0, 5, null, 2),
    taperDeg: quantity('deg', -3, 3, 0, 2),
  },
  station: {
    wheelDiameterMm: quantity('mm', 40, 600, null, 1),
    wheelWidthMm: quantity('mm', 5, 120, null, 0),
    wheelSpeedRpm: quantity('rpm', 1, 20_000, 90, 0),
    maxRimSpeedMPerS: quantity('mPerS', 0.5, 125, 20, 0),
    barDiameterMm: quantity('mm', 3, 60, null, 1),
    barOffsetMm: quantity('mm', 0, 600, 0, 1),
    grindingRatio: quantity('ratio', 0.1, 10_000, null, 1),
  },
  fixture: {
    seatOffsetMm: quantity('mm', -80, 80, null, 1),
    guideArmMm: quantity('mm', 5, 400, null, 1),
    screwPitchMm: quantity('mm', 0.1, 5, null, 2),
    pivotSetbackMm: quantity('mm', -60, 200, 0, 1),
    pivotOffsetMm: quantity('mm', -60, 60, 0, 1),
    rollHeightMm: quantity('mm', -60, 60, 0, 1),
    swingRadiusMm: quantity('mm', 20, 2_000, null, 1),
  },
  aim: {
    bandMm: quantity('mm', 0.05, 5, 0.4, 1),
    bevelAngleDeg: quantity('deg', 10, 70, null, 1),
    projectionMm: quantity('mm', 10, 400, null, 1),
    barDistanceMm: quantity('mm', 20, 800, null, 1),
    reliefMm: quantity('mm', 0, 12, null, 2),
    woodReliefMm: quantity('mm', 0, 12, null, 2),
    edgeRadiusMm: quantity('mm', 10, 100_000, null, 0),
    shavingDepthMm: quantity('mm', 0.002, 3, 0.1, 2),
    flatShare: quantity('share', 0, 0.9, 0.6, 2),
  },
  motion: {
    stopTurnsLeft: quantity('turn', 0, 12, 0, 2),
    stopTurnsRight: quantity('turn', 0, 12, 0, 2),
    yawLeftDeg: quantity('deg', 0, 15, null, 2),
    yawRightDeg: quantity('deg', 0, 15, null, 2),
    rollLeftDeg: quantity('deg', 0, 10, null, 2),
    rollRightDeg: quantity('deg', 0, 10, null, 2),
    recordedSweeps: quantity('sweep', 1, 200, 2, 0),
    traverseMm: quantity('mm', 0, 100, 10, 0),
    fingerReachMm: quantity('mm', 0, 100, 26, 0),
    endShare: quantity('share', 0.01, 0.49, 0.25, 2),
    loadN: quantity('N', 1, 100, 20, 0),
    sweeps: quantity('sweep', 1, 5_000, 120, 0),
    stepsPerSweep: quantity('count', 4, 200, 24, 0),
    removalPerSweepMm3: quantity('mm3', 0.001, 20, 0.5, 2),
    bedStiffnessNPerMm3: quantity('nPerMm3', 0.1, 2_000, 20, 0),
  },
  errors: {
    barAskewDeg: quantity('deg', -5, 5, 0, 2),
    barRollDeg: quantity('deg', -5, 5, 0, 2),
    wheelConeMm: quantity('mm', -1, 1, 0, 2),
    wheelCrownMm: quantity('mm', -1, 1, 0, 2),
    mountingAskewDeg: quantity('deg', -10, 10, 0, 2),
    pivotTiltDeg: quantity('deg', -10, 10, 0, 2),
    parasiticRollDeg: quantity('deg', -2, 2, 0, 2),
    stopLashMm: quantity('mm', 0, 2, 0, 2),
  },
  tolerances: {
    wheelDiameterMm: quantity('mm', 0, 5, 0.3, 2),
    projectionMm: quantity('mm', 0, 5, 0.3, 2),
    barMm: quantity('mm', 0, 5, 0.2, 2),
    seatOffsetMm: quantity('mm', 0, 5, 0.3, 2),
    guideArmMm: quantity('mm', 0, 10, 0.5, 2),
    stopTurns: quantity('turn', 0, 1, 0.05, 2),
    stopAngleDeg: quantity('deg', 0, 2, 0.05, 2),
    mountingAskewDeg: quantity('deg', 0, 5, 0.1, 2),
    barAskewDeg: quantity('deg', 0, 5, 0.05, 2),
    fingerReachMm: quantity('mm', 0, 20, 1, 1),
    removalShare: quantity('ratio', 0, 0.5, 0.2, 2),
  },
  calibration: {
    scale: quantity('ratio', 0.3, 3, 1, 2),
    lashMm: quantity('mm', -1, 2, 0, 2),
    scaleSe: quantity('ratio', 0, 2, null, 2),
    lashSe: quantity('mm', 0, 2, null, 2),
    scaleLashCorrelation: quantity('ratio', -1, 1, 0, 2),
    grinds: quantity('count', 1, 10_000, null, 0),
    repeatabilityMm: quantity('mm', 0, 2, 0, 3),
  },
  measure: {
    leafMm: quantity('mm', 0, 12, null, 2),
    stepMm: quantity('mm', 0.001, 1, 0.05, 2),
    placeMm: quantity('mm', -55, 55, null, 1),
    outMm: quantity('mm', 1, 55, null, 1),
    groundMinutes: quantity('min', 0.1, 240, null, 1),
    setBackMm: quantity('mm', 0, 10, null, 2),
    squareGapMm: quantity('mm', -10, 10, null, 2),
    squareOverMm: quantity('mm', 5, 300, null, 0),
  },
  honing: {
    setBackMm: quantity('mm', 0.001, 1, 0.02, 3),
    strokes: quantity('count', 0, 60, 5, 0),
  },
  square: {
    otherGapMm: quantity('mm', -10, 10, null, 2),
    clamping: quantity('count', 1, 20, 1, 0),
    wantedDeg: quantity('deg', -10, 10, 0, 2),
  },
  wood: {
    leverDeg: quantity('deg', -1, 1, 0, 2),
    skewDeg: quantity('deg', 0, 60, 0, 0),
    stepMm: quantity('mm', 0.5, 110, null, 1),
    ridgeMm: quantity('mm', 0.001, 1, null, 3),
    boardMm: quantity('mm', 1, 1500, 150, 0),
    stockMm: quantity('mm', 1, 110, 20, 1),
    shiftMm: quantity('mm', -55, 55, 0, 1),
  },
  care: {
    temperLimitC: quantity('degC', 80, 700, null, 0),
    lengthLeftMm: quantity('mm', 0, 250, null, 0),
    dueDays: quantity('day', 1, 3_650, null, 0),
    dueHonings: quantity('count', 1, 500, null, 0),
    copiesMostMb: quantity('MB', 10, 1_000_000, 500, 0),
  },
  out: {
    pictureWidthPx: quantity('px', 100, 8000, 1600, 0),
    clipWidthPx: quantity('px', 100, 3840, 960, 0),
    framesPerSecond: quantity('perS', 1, 60, 30, 0),
    fromSweep: quantity('sweep', 0, 5_000, 0, 0),
    toSweep: quantity('sweep', 0, 5_000, 1, 0),
  },
  label: {
    columns: quantity('count', 1, 20, 3, 0),
    rows: quantity('count', 1, 40, 7, 0),
    widthMm: quantity('mm', 5, 220, null, 1),
    heightMm: quantity('mm', 5, 300, null, 1),
    leftMm: quantity('mm', 0, 100, 0, 1),
    topMm: quantity('mm', 0, 150, 0, 1),
    gapAcrossMm: quantity('mm', 0, 50, 0, 1),
    gapDownMm: quantity('mm', 0, 50, 0, 1),
  },
  grid: {
    across: quantity('count', 5, 481, 115, 0),
    through: quantity('count', 3, 65, 17, 0),
  },
} as const satisfies Record<string, Record<string, Quantity>>

/** A path into the table, for example `blade.widthMm`. */
export type QuantityPath = {
  [S in keyof typeof quantities]: `${S}.${keyof (typeof quantities)[S] & string}`
}[keyof typeof quantities]

/** @returns the entry at a path; the path's type makes a miss impossible. */
export const quantityAt = (path: QuantityPath): Quantity => {
  const [section, key] = path.split('.') as [keyof typeof quantities, string]
  return (quantities[section] as Record<string, Quantity>)[key] as Quantity
}

import type { Unit } from '../quantities.ts'

/** Unit and decimals of every figure that a lesson can ask the engine for. */
export const lessonFigures = {
  /** Where the dot is with the iron in its plane, seen from behind: -1 left, 1 right. */
  dotInPlane: ['count', 0],
  reliefMm: ['mm', 2],
  reliefLeftMm: ['mm', 2],
  reliefRightMm: ['mm', 2],
  reliefHalfwayMm: ['mm', 2],
  /** Halfway out, as a share of the corner's relief: a quarter for an arc, a half for a roof. */
  halfwayShare: ['ratio', 2],
  /** Right corner back is +. */
  skewDeg: ['deg', 2],
  /** Left corner's relief less the right one's. */
  leftLessRightMm: ['mm', 2],
  /** How far the middle lies behind the nearer corner, where corners stand proud; else 0. */
  middleBehindMm: ['mm', 2],
  /** How far the edge is from the nearest arc. */
  offArcMm: ['mm', 3],
  /** The most that the edge itself went back. */
  edgeLostMm: ['mm', 2],
  wantedReliefMm: ['mm', 2],
  bevelDeg: ['deg', 1],
  chordDeg: ['deg', 1],
  hollowDepthMm: ['mm', 2],
  projectionMm: ['mm', 1],
  gapMm: ['mm', 1],
  barHeightMm: ['mm', 1],
  /** By how much the bevel falls with a millimetre more of projection. */
  bevelPerMmDeg: ['deg', 2],
  rimSpeedMPerS: ['mPerS', 1],
  freePlayLeftMm: ['mm', 2],
  freePlayRightMm: ['mm', 2],
  yawLeftDeg: ['deg', 2],
  /** Travel of the edge's middle to each side. */
  sweepMm: ['mm', 1],
  /** How far the fingers may reach before the corners wear faster. */
  reachLimitMm: ['mm', 1],
  /** Where the first ink goes, 0 at the edge, 1 at the heel. */
  inkPlaceShare: ['ratio', 2],
  /** Bare after the first sweeps, of the bevel's left, middle and right third. */
  inkLeftShare: ['ratio', 2],
  inkMiddleShare: ['ratio', 2],
  inkRightShare: ['ratio', 2],
  /** What is left of the old bevel between hollow and edge after the grind. */
  bandLeftMm: ['mm', 2],
  bandMiddleMm: ['mm', 2],
  bandRightMm: ['mm', 2],
  /** Widest less narrowest of these three. */
  bandUnevenMm: ['mm', 2],
  /** 1 where the burr runs all along the edge, else 0. */
  burrAllAlong: ['count', 0],
  woodReliefMm: ['mm', 3],
  /** The same of the edge that the grind leaves. */
  groundWoodReliefMm: ['mm', 3],
  pitchDeg: ['deg', 0],
  clearanceDeg: ['deg', 0],
  shavingWidthMm: ['mm', 0],
  shavingShareOfWidth: ['ratio', 2],
  shavingMm: ['mm', 2],
  /** Of the wanted edge from here to the leaves. How deep the deeper corner stands in a wide board. */
  trackMm: ['mm', 3],
  /** Ridges between passes a step apart. */
  ridgeMm: ['mm', 3],
  /** Where the edge is foremost with the lever where it is, + right. */
  crownMm: ['mm', 1],
  /** What a pass with the iron shifted makes of the edge of a board. */
  jointDeg: ['deg', 2],
  /** Under a straightedge lying evenly, at the corners; and pressed on one corner, at the other. */
  gapEvenMm: ['mm', 2],
  gapPressedMm: ['mm', 2],
  /** The latter over the former. */
  gapPressedTimes: ['ratio', 1],
  /** Mean of both corners' gaps with one pressed down. */
  gapPressedMeanMm: ['mm', 2],
  honedReliefMm: ['mm', 2],
  secondaryMm: ['mm', 2],
  /** Setback of the cap iron less the relief: edge that the corners keep in front of it. */
  capClearMm: ['mm', 2],
} as const satisfies Record<string, readonly [Unit, number]>

export type FigureName = keyof typeof lessonFigures
export const figureNames = Object.keys(lessonFigures) as readonly FigureName[]

import type { Job } from './job.ts'
import type { Problem } from './result.ts'

/** Sides as the operator sees them at the wheel, blade back up. */
export type Side = 'left' | 'right'

/** Where bar, projection and bevel stand. Sensitivities hold the other two fixed. */
export interface SetUpReport {
  /** Wheel axis to bar axis. */
  readonly barDistanceMm: number
  /** Bar axis to edge, along the back. */
  readonly projectionMm: number
  /** Angle at the very tip. */
  readonly bevelAngleDeg: number
  /** Between the surfaces of bar and wheel. */
  readonly gapMm: number
  /** Bar's axis above the wheel's highest point, bar above the axle. */
  readonly barHeightMm: number
  readonly bevelPerProjectionDegPerMm: number
  readonly bevelPerBarDistanceDegPerMm: number
  /** Bar's axis left where it is while the wheel wears. */
  readonly bevelPerWheelDiameterDegPerMm: number
  readonly rimSpeedMPerS: number
}

/** The concave bevel the wheel leaves. */
export interface HollowReport {
  /** Edge to heel, straight. */
  readonly chordMm: number
  /** What a flat stone finds; the tip is sharper. */
  readonly chordAngleDeg: number
  readonly depthMm: number
}

/** The aim, taken as an arc of a circle across the width. */
export interface PlanReport {
  readonly reliefMm: number
  /** Null where the tool has no seat. */
  readonly woodReliefMm: number | null
  /** Null for a straight edge. */
  readonly edgeRadiusMm: number | null
  /** Null where the tool has no seat. */
  readonly shavingWidthMm: number | null
}

/** Stop settings that form the wanted relief at both corners. */
export interface TurnsReport {
  readonly left: number
  readonly right: number
  /** False: the figures are the nearest the fixture can do, and `code` says why. */
  readonly reachable: boolean
  readonly code: 'reachable' | 'squareFixture' | 'beyondStopTravel' | 'fingersTooShort' | 'wheelTooNarrow' | 'noBalance'
}

/** Turn of the fixture, yaw or roll, that forms the wanted relief at both corners. */
export interface ForAimReport {
  readonly leftDeg: number
  readonly rightDeg: number
  /** Sweeps of this job until the edge is formed. */
  readonly sweeps: number
  readonly reachable: boolean
  readonly code: TurnsReport['code']
}

/** How far fixture and stops let the edge go, at the first setting. Null: nothing stops it. */
export interface FreedomReport {
  readonly yawLeftDeg: number | null
  readonly yawRightDeg: number | null
  readonly rollLeftDeg: number
  readonly rollRightDeg: number
  /** Travel of the edge's midpoint; sweepRightMm belongs to yawRightDeg. */
  readonly sweepLeftMm: number | null
  readonly sweepRightMm: number | null
  /** By the contact model, uncalibrated; null where no stops can be asked for. */
  readonly forAim: ForAimReport | null
  /** The same in turns of the stop screws; null but for a steered fixture whose arm and pitch are known. */
  readonly turnsForAim: TurnsReport | null
  readonly turnsCalibrated: TurnsReport | null
}

/** An edge line and what is read from it. */
export interface EdgeReport {
  /** Across the width, left corner first. */
  readonly edgeUMm: readonly number[]
  /** From the edge as it was; + is steel gone. */
  readonly edgeVMm: readonly number[]
  /** How far the corner lies behind the foremost point of the edge. */
  readonly reliefLeftMm: number
  readonly reliefRightMm: number
  readonly skewDeg: number
}

/** The edge that the grind left. */
export interface GrindReport extends EdgeReport {
  readonly volumeRemovedMm3: number
  readonly steps: number
  /** Bevel at the edge's middle as the receding edge makes it. */
  readonly bevelAngleDeg: number
}

/** Where the wheel has cut on the bevel, column by column; null where it has not. Lengths along the bevel. */
export interface BandReport {
  readonly fromEdgeMm: readonly (number | null)[]
  readonly fromHeelMm: readonly (number | null)[]
  /** Sweep after which to stop: freshening, the band as near to the edge as wanted; reshaping, burr all along. Null: not reached. */
  readonly stopSweep: number | null
}

/** The edge as the wood meets it. */
export interface WoodViewReport {
  readonly pitchDeg: number
  readonly clearanceDeg: number
  /** Mean of left and right. */
  readonly woodReliefMm: number
  readonly shavingWidthMm: number
  readonly shavingThicknessMaxMm: number
  readonly shavingAreaMm2: number
}

/** What one input's standard deviation leaves unknown; null where no neighbouring job can be worked out. */
export interface UncertaintyPart {
  readonly input: keyof Job['tolerances']
  readonly bevelAngleDeg: number | null
  /** Of the mean of both corners. */
  readonly reliefMm: number | null
  readonly skewDeg: number | null
}

/** Standard deviations that the job's tolerances leave, inputs independent and small; null as in the parts. */
export interface UncertaintyReport {
  readonly bevelAngleDeg: number | null
  readonly reliefLeftMm: number | null
  readonly reliefRightMm: number | null
  readonly skewDeg: number | null
  /** One for each input that is not exact and has a say, in the order of the job's tolerances. */
  readonly parts: readonly UncertaintyPart[]
}

/** What a user should know though the job can be done; words under `caution.<code>`. */
export interface Caution {
  readonly code: string
  readonly params: Problem['params']
}

/** The grind's relief, mean of both corners, as the fixture's history corrects it. */
export interface LearntReport {
  readonly reliefMm: number
  /** Of the next grind's relief. */
  readonly standardErrorMm: number
}

/** Everything solveJob finds. */
export interface Report {
  readonly setUp: SetUpReport
  readonly hollow: HollowReport
  readonly plan: PlanReport
  readonly freedom: FreedomReport
  /** Cuts at constant depth; the exact answer for rigid cuts, not a limit of the grind. Null where nothing stops the fixture. */
  readonly envelope: EdgeReport | null
  readonly grind: GrindReport
  readonly band: BandReport
  /** Null where the fixture has no calibration, or it does not apply. */
  readonly learnt: LearntReport | null
  /** Null where the tool has no seat. */
  readonly woodView: WoodViewReport | null
  readonly uncertainty: UncertaintyReport
  readonly cautions: readonly Caution[]
  readonly engineVersion: string
  /** The whole job, defaults filled in. */
  readonly job: Job
}

import type { Job, JobInput } from '../../geometry/job.ts'
import type { Fixture, Station, Tool } from './entities.ts'

/** The records a job is made of. */
export interface JobParts {
  readonly tool: Tool
  readonly station: Station
  readonly fixture: Fixture
  /** What the fixture has learnt, where it is to be used. */
  readonly calibration: Job['fixture']['calibration']
}

/** What of a tool enters its job's aim. */
export interface ToolAim {
  readonly bevelAngleDeg: number
  readonly projectionMm: number
  readonly reliefMm: number
  readonly shavingDepthMm: number
}

export const toolAimOf = ({ bevelAngleDeg, projectionMm, reliefMm, shavingDepthMm }: Tool): ToolAim => ({
  bevelAngleDeg,
  projectionMm,
  reliefMm,
  shavingDepthMm,
})

/** A tool as the blade of a job. */
export const bladeOf = ({ widthMm, thicknessMm, seatAngleDeg, bevelSide }: Tool) => ({
  widthMm,
  thicknessMm,
  seatAngleDeg,
  bevelSide,
})

/** A station as a job knows it; whether the wheel wears is no figure of the rack. */
export const stationOf = (station: Station): Job['station'] => ({
  wheelDiameterMm: station.wheelDiameterMm,
  wheelWidthMm: station.wheelWidthMm,
  wheelSpeedRpm: station.wheelSpeedRpm,
  maxRimSpeedMPerS: station.maxRimSpeedMPerS,
  barDiameterMm: station.barDiameterMm,
  barOffsetMm: station.barOffsetMm,
  grindingRatio: null,
})

export const isSteered = (fixture: Fixture): boolean => fixture.kind === 'steered'

/** A fixture as a job knows it. A square one has neither arm nor screws, whatever the record still remembers of them. */
export const fixtureOf = (fixture: Fixture) =>
  ({
    kind: fixture.kind,
    seatOffsetMm: fixture.seatOffsetMm,
    seatsOn: fixture.seatsOn,
    guideArmMm: isSteered(fixture) ? fixture.guideArmMm : null,
    screwPitchMm: isSteered(fixture) ? fixture.screwPitchMm : null,
    pivotSetbackMm: isSteered(fixture) ? fixture.pivotSetbackMm : 0,
    pivotOffsetMm: isSteered(fixture) ? fixture.pivotOffsetMm : 0,
  }) satisfies JobInput['fixture']

/** The movement with a fixture: what has no stop screws has nothing to turn. */
export const motionFor = (motion: Job['motion'], fixture: Fixture): Job['motion'] =>
  isSteered(fixture) ? motion : { ...motion, stopTurnsLeft: 0, stopTurnsRight: 0, yawLeftDeg: null, yawRightDeg: null }

import type { TFunction } from 'i18next'
import { degFromRad } from '../../geometry/units.ts'
import { fixed } from '../../main/contract/figures.ts'
import type { Stops } from '../scene/machine.ts'
import type { Rotation } from '../scene/wheel.ts'
import type { Figures } from '../ui/useFigure.ts'
import type { Moment, Running } from './useLiveGrind.ts'

/** What the scene in words is told from. */
export interface SpokenFacts {
  readonly running: Pick<Running, 'job' | 'setUp'>
  readonly moment: Moment
  readonly stops: Stops
  /** Where the edge touches, + right of the middle; null: nowhere. */
  readonly touchingUMm: readonly [fromMm: number, toMm: number] | null
  /** Ink left on the left third, the middle one and the right one, 0 to 1. */
  readonly inkByThird: readonly [left: number, middle: number, right: number]
  readonly wantedMm: number | null
  readonly lifted: boolean
  readonly rotation: Rotation
  readonly dot: 'left' | 'right'
}

/** One line of the scene in words; lines keep their names, so that a reader is told only those that changed. */
export interface SpokenLine {
  readonly name: string
  readonly text: string
}

/** Places nearer to the middle than this are in the middle (mm). */
const MIDDLE_MM = 0.5
/** Yaw smaller than this reads as square (degrees). */
const SQUARE_DEG = 0.005

const sideOf = (value: number, within: number): 'left' | 'middle' | 'right' =>
  Math.abs(value) < within ? 'middle' : value < 0 ? 'left' : 'right'

type Tell = (t: TFunction, figures: Figures, facts: SpokenFacts) => string

const wheel: Tell = (t, { inWords }, { running, rotation }) => {
  const { wheelDiameterMm, wheelSpeedRpm } = running.job.station
  return t(`spoken:wheel.${rotation}`, {
    diameter: inWords(wheelDiameterMm, 'mm', 1),
    speed: inWords(wheelSpeedRpm, 'rpm', 0),
  })
}

const bar: Tell = (t, { inWords }, { running: { setUp } }) =>
  t('spoken:bar', {
    diameter: inWords(2 * setUp.barRadiusMm, 'mm', 1),
    gap: inWords(setUp.barDistanceMm - setUp.wheelRadiusMm - setUp.barRadiusMm, 'mm', 1),
  })

const blade: Tell = (t, { inWords }, { running: { job, setUp }, dot }) =>
  t(`spoken:blade.${dot}`, {
    width: inWords(job.blade.widthMm, 'mm', 1),
    thickness: inWords(job.blade.thicknessMm, 'mm', 1),
    bevel: inWords(degFromRad(setUp.bevelRad), 'deg', 1),
  })

const projection: Tell = (t, { inWords }, { running }) =>
  t('spoken:projection', { projection: inWords(running.setUp.projectionMm, 'mm', 1) })

const isSteered = ({ running: { job } }: SpokenFacts): boolean =>
  job.fixture.kind === 'steered' && job.fixture.guideArmMm !== null

const stops: Tell = (t, { inWords }, facts) => {
  if (!isSteered(facts)) return ''
  const { leftMm, rightMm, leftTurns, rightTurns } = facts.stops
  return t('spoken:stops', {
    left: inWords(leftMm, 'mm', 2),
    right: inWords(rightMm, 'mm', 2),
    leftTurns: inWords(leftTurns, 'turn', 2),
    rightTurns: inWords(rightTurns, 'turn', 2),
  })
}

const pose: Tell = (t, { inWords }, { moment, lifted }) => {
  if (lifted) return t('spoken:lifted')
  const yawDeg = degFromRad(moment.yawRad)
  const side = sideOf(yawDeg, SQUARE_DEG)
  return t(`spoken:pose.${side === 'middle' ? 'square' : side}`, {
    yaw: inWords(Math.abs(yawDeg), 'deg', 2),
    tilt: inWords(degFromRad(moment.tiltRad), 'deg', 1),
  })
}

const bears: Tell = (t, _, facts) =>
  facts.lifted || !isSteered(facts) ? '' : t(`spoken:bears.${facts.moment.bearing}`)

const load: Tell = (t, { inWords }, { running, moment, lifted }) =>
  lifted
    ? ''
    : t(`spoken:load.${sideOf(moment.loadPlaceMm, MIDDLE_MM)}`, {
        load: inWords(running.job.motion.loadN, 'N', 0),
        place: inWords(Math.abs(moment.loadPlaceMm), 'mm', 0),
      })

const touch: Tell = (t, { inWords }, { moment, touchingUMm, lifted }) => {
  if (lifted) return ''
  if (touchingUMm === null || moment.step === 0) return t('spoken:touch.none')
  const place = (uMm: number): string =>
    t(`spoken:place.${sideOf(uMm, MIDDLE_MM)}`, { place: inWords(Math.abs(uMm), 'mm', 0) })
  return t('spoken:touch.some', {
    width: inWords(touchingUMm[1] - touchingUMm[0], 'mm', 0),
    from: place(touchingUMm[0]),
    to: place(touchingUMm[1]),
    most: fixed(moment.mostPressureNPerMm, 1),
  })
}

const relief: Tell = (t, { inWords }, { moment, wantedMm }) =>
  t(`spoken:relief.${wantedMm === null ? 'unknown' : 'wanted'}`, {
    left: inWords(moment.reliefLeftMm, 'mm', 2),
    right: inWords(moment.reliefRightMm, 'mm', 2),
    wanted: inWords(wantedMm ?? 0, 'mm', 2),
  })

const ink: Tell = (t, _, { inkByThird }) => {
  const [left, middle, right] = inkByThird.map((share) => Math.round(100 * share))
  return t('spoken:ink', { left, middle, right })
}

const lines = { wheel, bar, blade, projection, stops, pose, bears, load, touch, relief, ink }

/** The scene in words, with units: what is fixed first, then what the moment shows. */
export const spokenLines = (t: TFunction, figures: Figures, facts: SpokenFacts): readonly SpokenLine[] =>
  Object.entries(lines)
    .map(([name, tell]) => ({ name, text: tell(t, figures, facts) }))
    .filter(({ text }) => text !== '')

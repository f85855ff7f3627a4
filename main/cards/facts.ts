import type { TFunction } from 'i18next'
import type { Job } from '../../geometry/job.ts'
import { quantities } from '../../geometry/quantities.ts'
import type { Report } from '../../geometry/report.ts'
import { tan } from '../../geometry/trigonometry.ts'
import { radFromDeg } from '../../geometry/units.ts'
import type { Settings, Station } from '../contract/entities.ts'
import { type Figure, figure } from '../contract/figures.ts'
import { createTexts } from '../texts.ts'

/** What the card says of the tool and its grinder beyond the job; what is not known is left for a pencil. */
export interface CardTool {
  readonly code: string
  readonly name: string
  readonly dotCorner: 'left' | 'right'
  /** Who takes the card to the wheel; may be empty. */
  readonly who: string
  readonly jobCode?: string
  readonly rotation?: Station['rotation']
  /** UTC, ISO 8601. */
  readonly measuredAt?: string
}

/** Left and right at the wheel, back up. */
export interface Pair<T> {
  readonly left: T
  readonly right: T
}

/** All that the parts of a card draw from. */
export interface CardFacts {
  readonly job: Job
  readonly report: Report
  readonly tool: CardTool
  readonly at: Date
  readonly t: TFunction
  /** A length as the workshop reads it. */
  readonly length: (mm: number, decimals: number) => Figure
}

/** A figure and its unit in one piece, for running text. */
export const inWords = ({ text, unit }: Figure): string => (unit === '' ? text : `${text} ${unit}`)

/** Collects what a card needs; figures in `lengthUnit`. */
export const factsOf = (
  job: Job,
  report: Report,
  tool: CardTool,
  at: Date,
  lengthUnit: Settings['lengthUnit'],
): CardFacts => ({
  job,
  report,
  tool,
  at,
  t: createTexts().getFixedT(null, 'card'),
  length: (mm, decimals) => figure(mm, 'mm', decimals, lengthUnit),
})

/** A day as the workshop's own calendar has it, in words. */
export const dayOf = (t: TFunction, at: Date): string =>
  t('date', { day: at.getDate(), month: t('months').split(',')[at.getMonth()], year: at.getFullYear() })

/** What the stops are set by: turns where the screws are known, else free play, else yaw. */
export interface Stops {
  readonly main: Pair<Figure>
  readonly unit: string
  /** The same once more in other units; null where nothing more is known. */
  readonly note: string | null
}

const withoutZeros = (text: string): string => (/[.,]/.test(text) ? text.replace(/[.,]?0+$/, '') : text)

const both = <T>(left: T, right: T): Pair<T> => ({ left, right })

const noteOf = (t: TFunction, key: 'freePlay' | 'yaw', { left, right }: Pair<string>): string =>
  left === right ? t(`${key}Each`, { [key]: left }) : t(`${key}Sides`, { left, right })

const yawFigures = (yawDeg: Pair<number>): Pair<Figure> => {
  const say = (deg: number) => figure(deg, 'deg', quantities.motion.yawLeftDeg.decimals)
  return both(say(yawDeg.left), say(yawDeg.right))
}

const turnsOf = ({ job }: CardFacts, play: Pair<number>): Pair<Figure> | null => {
  const { screwPitchMm } = job.fixture
  if (screwPitchMm === null) return null
  const say = (givenDeg: number | null, turns: number, playMm: number): Figure => {
    const { text, unit } = figure(
      givenDeg === null ? turns : playMm / screwPitchMm,
      'turn',
      quantities.motion.stopTurnsLeft.decimals,
    )
    return { text: withoutZeros(text), unit }
  }
  const { yawLeftDeg, yawRightDeg, stopTurnsLeft, stopTurnsRight } = job.motion
  return both(say(yawLeftDeg, stopTurnsLeft, play.left), say(yawRightDeg, stopTurnsRight, play.right))
}

/** One line a setting, for a job whose stops are set more than once; empty for any other. */
export const settingLines = ({ job, t }: CardFacts): readonly string[] => {
  const { schedule, ...first } = job.motion
  if (schedule.length === 0) return []
  return [first, ...schedule].map(({ stopTurnsLeft, stopTurnsRight, fingerReachMm, sweeps }, i) => {
    const say = (turns: number) => withoutZeros(figure(turns, 'turn', 2).text)
    const [left, right] = [say(stopTurnsLeft), say(stopTurnsRight)]
    const turns = left === right ? left : `${left} | ${right}`
    return t('setting', { number: i + 1, turns, count: sweeps, reach: fingerReachMm.toFixed(0) })
  })
}

/** How the stops of a steered fixture are set, or null for one without stop screws. Free play = tan(yaw) x guide arm. */
export const stopsOf = (facts: CardFacts): Stops | null => {
  const { job, report, t, length } = facts
  const { guideArmMm, kind } = job.fixture
  const { yawLeftDeg, yawRightDeg } = report.freedom
  if (kind !== 'steered' || yawLeftDeg === null || yawRightDeg === null) return null
  const yaw = yawFigures(both(yawLeftDeg, yawRightDeg))
  if (guideArmMm === null) return { main: yaw, unit: t('stopsYaw'), note: null }
  const playMm = (deg: number) => tan(radFromDeg(deg)) * guideArmMm
  const play = both(playMm(yawLeftDeg), playMm(yawRightDeg))
  const playFigures = both(length(play.left, 2), length(play.right, 2))
  const turns = turnsOf(facts, play)
  if (turns === null)
    return {
      main: playFigures,
      unit: playFigures.left.unit,
      note: noteOf(t, 'yaw', both(yaw.left.text, yaw.right.text)),
    }
  const note = noteOf(t, 'freePlay', both(inWords(playFigures.left), inWords(playFigures.right)))
  return { main: turns, unit: t('stopsTurns'), note }
}

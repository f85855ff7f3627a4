import { meanReliefMm } from '../../../geometry/edge.ts'
import { freedomOf } from '../../../geometry/freedom.ts'
import { hollowOf } from '../../../geometry/hollow.ts'
import type { Job } from '../../../geometry/job.ts'
import { pathOf } from '../../../geometry/motion.ts'
import { reachLimitMm } from '../../../geometry/reach.ts'
import type { GrindReport } from '../../../geometry/report.ts'
import type { SetUp } from '../../../geometry/setUp.ts'
import { degFromRad, rimSpeedMPerS } from '../../../geometry/units.ts'
import { fixed } from '../../../main/contract/figures.ts'
import type { Figures } from '../../ui/useFigure.ts'

/** The formulas shown, in the order one asks for them; their words stand under `formulas:<name>`. */
export const formulaNames = ['bar', 'tip', 'yaw', 'roof', 'reach', 'rim'] as const
export type FormulaName = (typeof formulaNames)[number]

/** One formula with this job's figures in it. */
export interface FormulaLine {
  readonly name: FormulaName
  /** What stands for each symbol, in words with units. */
  readonly params: Readonly<Record<string, string>>
  /** What it comes to. */
  readonly comesTo: string
}

/** What the formulas are reckoned from. */
export interface FormulaFacts {
  readonly job: Job
  readonly setUp: SetUp
  /** Null while it is not known. */
  readonly grind: GrindReport | null
  readonly figures: Figures
}

const barLine = ({ setUp, figures }: FormulaFacts): FormulaLine => {
  const mm = (value: number) => figures.inWords(value, 'mm', 1)
  return {
    name: 'bar',
    params: {
      projection: mm(setUp.projectionMm),
      radius: mm(setUp.wheelRadiusMm),
      offset: mm(setUp.seatOffsetMm),
      bevel: figures.inWords(degFromRad(setUp.bevelRad), 'deg', 1),
    },
    comesTo: mm(setUp.barDistanceMm),
  }
}

const tipLine = ({ job, setUp, figures }: FormulaFacts): FormulaLine => {
  const { depthMm, chordMm, chordAngleDeg } = hollowOf(setUp.wheelRadiusMm, setUp.bevelRad, job.blade.thicknessMm)
  return {
    name: 'tip',
    params: {
      radius: figures.inWords(setUp.wheelRadiusMm, 'mm', 1),
      chord: figures.inWords(chordMm, 'mm', 1),
      chordAngle: figures.inWords(chordAngleDeg, 'deg', 1),
      tip: figures.inWords(degFromRad(setUp.bevelRad), 'deg', 1),
    },
    comesTo: figures.inWords(depthMm, 'mm', 3),
  }
}

/** Both stops' slopes, or null where the fixture does not turn about stops set in turns. */
const slopesOf = ({ job, setUp }: FormulaFacts): readonly [number, number] | null => {
  const freedom = freedomOf(job, setUp)
  if (!freedom.ok || job.fixture.kind !== 'steered' || job.fixture.guideArmMm === null) return null
  const { slopeLeft, slopeRight } = freedom.value.settings[0]
  return [slopeLeft, slopeRight]
}

const yawLines = (facts: FormulaFacts, [left, right]: readonly [number, number]): readonly FormulaLine[] => {
  const { job, grind, figures } = facts
  const arm = job.fixture.guideArmMm as number
  const half = job.blade.widthMm / 2
  const mm = (value: number) => figures.inWords(value, 'mm', 2)
  const deg = (slope: number) => figures.inWords(degFromRad(Math.atan(slope)), 'deg', 2)
  const roof = ((left + right) / 2) * half
  const share = grind === null || roof === 0 ? '' : fixed(meanReliefMm(grind) / roof, 2)
  return [
    {
      name: 'yaw',
      params: { left: mm(left * arm), right: mm(right * arm), arm: figures.inWords(arm, 'mm', 1) },
      comesTo: left === right ? deg(left) : `${deg(left)} / ${deg(right)}`,
    },
    {
      name: 'roof',
      params: {
        slope: fixed((left + right) / 2, 4),
        half: figures.inWords(half, 'mm', 1),
        formed: grind === null ? '' : mm(meanReliefMm(grind)),
        share,
      },
      comesTo: mm(roof),
    },
  ]
}

const reachLine = ({ job, figures }: FormulaFacts): FormulaLine => {
  const mm = (value: number) => figures.inWords(value, 'mm', 1)
  const limitMm = reachLimitMm(pathOf(job.motion), job.blade.widthMm)
  const { fingerReachMm } = job.motion
  return {
    name: 'reach',
    params: {
      reach: mm(fingerReachMm),
      width: mm(job.blade.widthMm),
      side: fingerReachMm > limitMm ? 'beyond' : 'within',
    },
    comesTo: mm(limitMm),
  }
}

const rimLine = ({ job, figures }: FormulaFacts): FormulaLine => {
  const { wheelDiameterMm, wheelSpeedRpm, maxRimSpeedMPerS } = job.station
  const speed = (value: number) => figures.inWords(value, 'mPerS', 1)
  return {
    name: 'rim',
    params: {
      diameter: figures.inWords(wheelDiameterMm, 'mm', 1),
      turns: figures.inWords(wheelSpeedRpm, 'rpm', 0),
      most: speed(maxRimSpeedMPerS),
    },
    comesTo: speed(rimSpeedMPerS(wheelDiameterMm, wheelSpeedRpm)),
  }
}

/** The formulas that this job rests on, with its figures put in. */
export const formulaLines = (facts: FormulaFacts): readonly FormulaLine[] => {
  const slopes = slopesOf(facts)
  const turning = slopes === null ? [] : yawLines(facts, slopes)
  return [barLine(facts), tipLine(facts), ...turning, reachLine(facts), rimLine(facts)]
}

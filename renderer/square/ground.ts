import { freePlayOf } from '../../geometry/freedom.ts'
import type { Job } from '../../geometry/job.ts'
import type { BenchLog } from '../../main/contract/entities.ts'
import type { Ground, KeptReading } from './setting.ts'

/** How a job grinds, as far as it turns an edge: closed stops turn nothing. */
export const groundOf = (job: Job, bevelDeg: number): Ground => {
  const { fixture, station } = job
  const play = freePlayOf(job)
  const closed = play !== null && play.leftMm === 0 && play.rightMm === 0
  return {
    bevelDeg,
    wheelWidthMm: station.wheelWidthMm,
    guideArmMm: fixture.kind === 'steered' && !closed ? fixture.guideArmMm : null,
    unequalPlayMm: play && play.rightMm - play.leftMm,
  }
}

/** As many as are worth taking at once: a cause lasts for weeks, not for years. */
const MOST_KEPT = 10

interface Place {
  readonly stationId: string
  readonly fixtureId: string
}

/** What is read of a line. */
export type SquareLine = Pick<
  BenchLog,
  | 'id'
  | 'stage'
  | 'counts'
  | 'stationId'
  | 'fixtureId'
  | 'squareGapMm'
  | 'squareOverMm'
  | 'freePlayLeftMm'
  | 'freePlayRightMm'
>

/** A line's own free play, where it kept one. */
const playOf = ({ freePlayLeftMm, freePlayRightMm }: SquareLine, guideArmMm: number | null) => {
  if (freePlayLeftMm === null || freePlayRightMm === null) return { guideArmMm, unequalPlayMm: null }
  const closed = freePlayLeftMm === 0 && freePlayRightMm === 0
  return { guideArmMm: closed ? null : guideArmMm, unequalPlayMm: freePlayRightMm - freePlayLeftMm }
}

/**
 * Readings by a square that the log keeps of edges as ground at a place, oldest first. A line left out of what the fixture learns
 * is left out here as well.
 * @param lines newest first
 * @param taken lines that are in the list
 */
export const keptAt = (
  lines: readonly SquareLine[],
  { stationId, fixtureId }: Place,
  { fixture, station }: Job,
  bevelDeg: number,
  taken: readonly (string | null)[],
): readonly KeptReading[] => {
  const arm = fixture.kind === 'steered' ? fixture.guideArmMm : null
  return lines
    .filter((line) => line.stationId === stationId && line.fixtureId === fixtureId && !taken.includes(line.id))
    .filter(({ stage, counts }) => stage === 'asGround' && counts === 'yes')
    .flatMap((line) => {
      const { id, squareGapMm: gapMm, squareOverMm: overMm } = line
      if (gapMm === null || overMm === null) return []
      return [{ logId: id, gapMm, overMm, bevelDeg, wheelWidthMm: station.wheelWidthMm, ...playOf(line, arm) }]
    })
    .slice(0, MOST_KEPT)
    .reverse()
}

import { type Learnt as Calibrated, calibrate, freePlayOf, type Grind } from '../../geometry/calibrate.ts'
import { ok, type Result } from '../../geometry/result.ts'
import type { Learnt, LearntGrind, Standing } from '../contract/learnt.ts'
import type { Database } from '../database/schema.ts'

/** Leaves typed in hundredths that lie just a step apart may be off it by rounding (mm). */
const DUST_MM = 1e-9

/** More grinds say no more: older ones are of another wheel, screw and hand. */
const MOST_GRINDS = 300

/** The newest reshapings of a fixture that were measured as ground, each with its tool. */
const linesOf = (db: Database, fixtureId: string) =>
  db
    .selectFrom('benchLog')
    .innerJoin('tool', 'tool.id', 'benchLog.toolId')
    .select([
      'benchLog.id',
      'benchLog.version',
      'benchLog.at',
      'benchLog.method',
      'benchLog.reliefLeftMm',
      'benchLog.reliefRightMm',
      'benchLog.leafStepMm',
      'benchLog.counts',
      'benchLog.freePlayLeftMm',
      'benchLog.freePlayRightMm',
      'benchLog.modelReliefMm',
      'tool.code',
      'tool.name',
    ])
    .where('benchLog.fixtureId', '=', fixtureId)
    .where('benchLog.stage', '=', 'asGround')
    .where('benchLog.task', '=', 'reshape')
    .where('benchLog.deletedAt', 'is', null)
    .where('benchLog.modelReliefMm', 'is not', null)
    .where('benchLog.reliefLeftMm', 'is not', null)
    .where('benchLog.reliefRightMm', 'is not', null)
    .orderBy('benchLog.at', 'desc')
    .orderBy('benchLog.id', 'desc')
    .limit(MOST_GRINDS)
    .execute()

type Line = Awaited<ReturnType<typeof linesOf>>[number]

const grindOf = (line: Line): Grind => ({
  freePlayLeftMm: line.freePlayLeftMm ?? 0,
  freePlayRightMm: line.freePlayRightMm ?? 0,
  modelReliefMm: line.modelReliefMm ?? 0,
  measuredReliefMm: ((line.reliefLeftMm ?? 0) + (line.reliefRightMm ?? 0)) / 2,
  date: line.at,
})

/** Why a line does not count, whatever the others say; null: it may. */
const barred = (line: Line): Standing | null => {
  if (line.counts === 'no') return 'excluded'
  if (freePlayOf(grindOf(line)) <= 0) return 'noFreePlay'
  const apartMm = Math.abs((line.reliefLeftMm ?? 0) - (line.reliefRightMm ?? 0))
  return line.method === 'leaves' && apartMm > (line.leafStepMm ?? 0) + DUST_MM ? 'unequal' : null
}

const told = ({ scale, lashMm, scaleSe, lashSe, scaleLashCorrelation, grinds, repeatabilityMm }: Calibrated) => ({
  scale,
  lashMm,
  scaleSe,
  lashSe,
  scaleLashCorrelation,
  grinds,
  repeatabilityMm,
})

const historyOf = (lines: readonly Line[]): readonly Grind[] =>
  lines.map((line) => ({ ...grindOf(line), excluded: barred(line) !== null }))

const learntGrind = (line: Line, i: number, { residualsMm, outliers }: Calibrated): LearntGrind => {
  const grind = grindOf(line)
  return {
    lineId: line.id,
    version: line.version,
    toolCode: line.code,
    toolName: line.name,
    at: line.at,
    freePlayMm: freePlayOf(grind),
    modelReliefMm: grind.modelReliefMm,
    measuredReliefMm: grind.measuredReliefMm,
    residualMm: residualsMm[i] ?? 0,
    standing: barred(line) ?? (outliers[i] ? 'outlier' : 'used'),
  }
}

/** @returns the calibration before the newest grind that counts */
const beforeNewest = (lines: readonly Line[]): Result<Learnt['before']> => {
  const newest = lines.findLastIndex((line) => barred(line) === null)
  if (newest < 0) return ok(null)
  const before = calibrate(historyOf(lines.filter((_, i) => i !== newest)))
  return before.ok ? ok(told(before.value)) : before
}

/** What a fixture has learnt from its measured grinds, of whichever iron. */
export const learntOf = async (db: Database, fixtureId: string): Promise<Result<Learnt>> => {
  const lines = (await linesOf(db, fixtureId)).reverse()
  const calibrated = calibrate(historyOf(lines))
  if (!calibrated.ok) return calibrated
  const before = beforeNewest(lines)
  if (!before.ok) return before
  return ok({
    grinds: lines.map((line, i) => learntGrind(line, i, calibrated.value)),
    calibration: told(calibrated.value),
    before: before.value,
    code: calibrated.value.code,
  })
}

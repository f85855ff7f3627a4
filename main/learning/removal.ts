import { type RemovalNote, removalOf } from '../../geometry/removal.ts'
import type { Database } from '../database/schema.ts'

const meanOf = (left: number | null, right: number | null): number | null =>
  left === null || right === null ? null : (left + right) / 2

/** The relief that a tool had before a time; null: nobody measured it. */
const reliefBefore = async (db: Database, toolId: string, at: string): Promise<number | null> => {
  const line = await db
    .selectFrom('benchLog')
    .select(['reliefLeftMm', 'reliefRightMm'])
    .where('toolId', '=', toolId)
    .where('deletedAt', 'is', null)
    .where('at', '<', at)
    .orderBy('at', 'desc')
    .limit(1)
    .executeTakeFirst()
  return line ? meanOf(line.reliefLeftMm, line.reliefRightMm) : null
}

/** Grinds at a station whose loss of length was noted. */
const notedAt = (db: Database, stationId: string) =>
  db
    .selectFrom('benchLog')
    .innerJoin('tool', 'tool.id', 'benchLog.toolId')
    .select([
      'benchLog.toolId',
      'benchLog.at',
      'benchLog.setBackMm',
      'benchLog.groundMinutes',
      'benchLog.sweeps',
      'benchLog.reliefLeftMm',
      'benchLog.reliefRightMm',
      'tool.widthMm',
      'tool.thicknessMm',
    ])
    .where('benchLog.stationId', '=', stationId)
    .where('benchLog.stage', '=', 'asGround')
    .where('benchLog.deletedAt', 'is', null)
    .where('benchLog.counts', '=', 'yes')
    .where('benchLog.setBackMm', 'is not', null)
    .where('benchLog.sweeps', 'is not', null)
    .execute()

type Line = Awaited<ReturnType<typeof notedAt>>[number]

/** Without an earlier reading the curve is taken to have been there before. */
const noteOf = async (db: Database, line: Line): Promise<RemovalNote> => {
  const after = meanOf(line.reliefLeftMm, line.reliefRightMm) ?? 0
  return {
    widthMm: line.widthMm,
    thicknessMm: line.thicknessMm,
    setBackMm: line.setBackMm ?? 0,
    reliefBeforeMm: (await reliefBefore(db, line.toolId, line.at)) ?? after,
    reliefAfterMm: after,
    sweeps: line.sweeps ?? 0,
    minutes: line.groundMinutes,
  }
}

/** What the grinds at a station took of steel; null where nothing was noted. */
export const stationRemovalOf = async (db: Database, stationId: string) => {
  const lines = await notedAt(db, stationId)
  return removalOf(await Promise.all(lines.map((line) => noteOf(db, line))))
}

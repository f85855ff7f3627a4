import { sql } from 'kysely'
import { lifeLeft } from '../../geometry/lifeLeft.ts'
import { localDay } from '../contract/days.ts'
import type { Tool } from '../contract/entities.ts'
import type { Life } from '../contract/life.ts'
import { findRecord } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { toolStore } from '../rack/tool.ts'

/** Grinds that are looked back on, newest first: an iron is not ground today as it was in years past. */
const LOOKED_BACK = 20

interface Ground {
  readonly at: string
  readonly setBackMm: number | null
  readonly volumeMm3: number | null
}

const groundLines = async (db: Database, toolId: string): Promise<readonly Ground[]> => {
  const { rows } =
    await sql<Ground>`SELECT at, setBackMm, report ->> '$.grind.volumeRemovedMm3' AS volumeMm3 FROM benchLog
    WHERE toolId = ${toolId} AND stage = 'asGround' AND deletedAt IS NULL ORDER BY at DESC LIMIT ${LOOKED_BACK}`.execute(
      db,
    )
  return rows
}

/** When the length left was last written down; null: before the history begins. */
const lengthAt = async (db: Database, toolId: string): Promise<string | null> => {
  const { rows } = await sql<{ at: string }>`SELECT at FROM change WHERE noun = 'tool' AND entityId = ${toolId}
    AND (before IS NULL OR before ->> '$.lengthLeftMm' IS NOT after ->> '$.lengthLeftMm') AND after IS NOT NULL
    ORDER BY id DESC LIMIT 1`.execute(db)
  return rows[0]?.at ?? null
}

/** What one grind took, by the bench where it was noted, else by the model: the whole bevel goes back, as in geometry/removal.ts. */
const takenMm = ({ setBackMm, volumeMm3 }: Ground, { widthMm, thicknessMm }: Tool): number | null =>
  setBackMm ?? (volumeMm3 === null ? null : volumeMm3 / (widthMm * thicknessMm))

const known = (list: readonly (number | null)[]): readonly number[] => list.filter((each) => each !== null)

/** @returns how many grinds a tool has left; null where its length was not measured or no grind says what it took */
export const lifeOf = async (db: Database, toolId: string): Promise<Life | null> => {
  const tool = await findRecord(db, toolStore, toolId)
  if (tool === null || tool.lengthLeftMm === null) return null
  const lines = await groundLines(db, toolId)
  const noted = known(lines.map(({ setBackMm }) => setBackMm))
  const by = noted.length > 0 ? 'bench' : 'model'
  const taken = by === 'bench' ? noted : known(lines.map((line) => takenMm(line, tool)))
  const writtenAt = await lengthAt(db, toolId)
  const since = writtenAt === null ? [] : lines.filter(({ at }) => at > writtenAt)
  const takenSinceMm = known(since.map((line) => takenMm(line, tool))).reduce((sum, each) => sum + each, 0)
  const life = lifeLeft(tool.lengthLeftMm - takenSinceMm, taken, by)
  if (life === null) return null
  const lengthOn = writtenAt === null ? null : localDay(new Date(writtenAt))
  return { ...life, by, counted: taken.length, lengthOn, takenSinceMm }
}

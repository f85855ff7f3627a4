import type { DayQueue, DaySetting, QueueLine } from '../contract/day.ts'
import type { ToolLine } from '../contract/entities.ts'
import type { QueueEntry } from '../contract/work.ts'
import type { Database } from '../database/schema.ts'
import { jobsOfTools, type KeptJob } from '../job/job.ts'
import { type Serving, servingOf } from '../job/parts.ts'
import { toolsOfIds } from '../rack/finding/findTools.ts'
import { queueEntryStore } from '../rack/stores.ts'
import { daySetting } from './daySetting.ts'
import { faceOf } from './face.ts'
import { type Queued, queueOrder } from './queueOrder.ts'

const standing = (db: Database) => db.selectFrom('queueEntry').selectAll().where('deletedAt', 'is', null)

/** @returns a day's entries */
export const entriesOf = async (db: Database, onDay: string): Promise<readonly QueueEntry[]> =>
  (await standing(db).where('onDay', '=', onDay).execute()).map((row) => queueEntryStore.fromRow(row as never))

/** @returns entries of days before that were not done, of tools that stand, the latest first */
export const leftBefore = async (db: Database, onDay: string): Promise<readonly QueueEntry[]> => {
  const rows = await standing(db)
    .where('onDay', '<', onDay)
    .where('doneAt', 'is', null)
    .where('toolId', 'in', db.selectFrom('tool').select('id').where('deletedAt', 'is', null))
    .orderBy('onDay', 'desc')
    .execute()
  return rows.map((row) => queueEntryStore.fromRow(row as never))
}

type Line = Omit<QueueLine, 'why'>

const lineFor = (entry: QueueEntry, tool: ToolLine, job: KeptJob | null, serving: Serving): Line => {
  const setting = daySetting(tool, job, serving)
  const { code = '', path = '', params = {} } = setting.ok ? {} : (setting.problems[0] ?? {})
  return {
    entry,
    tool,
    face: faceOf(tool),
    setting: setting.ok ? setting.value : null,
    problem: setting.ok ? null : { code, path, params },
  }
}

const playOf = ({ freePlay }: DaySetting): number => (freePlay ? freePlay.leftMm + freePlay.rightMm : 0)

const queuedOf = (line: Line & { readonly setting: DaySetting }): Queued & { readonly line: Line } => ({
  line,
  code: line.tool.code,
  stationCode: line.setting.station.code,
  fixtureCode: line.setting.fixture.code,
  barDistanceMm: line.setting.barDistanceMm,
  freePlayMm: playOf(line.setting),
  face: line.face,
})

const canBeSet = (line: Line): line is Line & { readonly setting: DaySetting } => line.setting !== null

/** In their order, those that cannot be set up at the end. */
const inOrder = (lines: readonly Line[]): QueueLine[] => [
  ...queueOrder(lines.filter(canBeSet).map(queuedOf)).map(({ iron, why }) => ({ ...iron.line, why: [...why] })),
  ...lines.filter(({ setting }) => setting === null).map((line) => ({ ...line, why: [] })),
]

/** @returns a day's irons in the order to grind them, those done too. @param now UTC ISO text */
export const dayQueue = async (db: Database, onDay: string, now: string): Promise<DayQueue> => {
  const entries = await entriesOf(db, onDay)
  const toolIds = entries.map(({ toolId }) => toolId)
  const tools = new Map((await toolsOfIds(db, toolIds, now)).map((tool) => [tool.id, tool]))
  const [jobs, serving] = [await jobsOfTools(db, toolIds), await servingOf(db)]
  const lines = entries.flatMap((entry) => {
    const tool = tools.get(entry.toolId)
    return tool ? [lineFor(entry, tool, jobs.get(tool.id) ?? null, serving)] : []
  })
  return { lines: inOrder(lines), leftOver: (await leftBefore(db, onDay)).length }
}

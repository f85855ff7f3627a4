import type { Selectable } from 'kysely'
import type { Noun } from '../contract/entities.ts'
import { cellsOf } from './change.ts'
import type { ChangeRow, Database } from './schema.ts'

type Line = Selectable<ChangeRow>

/** Records that have only a code of their own: people know them by the tool they belong to. */
const ofATool: readonly Noun[] = ['job', 'benchLog']

const toolIdOf = ({ before, after }: Line): string | null => {
  const toolId = cellsOf(after ?? before ?? '{}')?.toolId
  return typeof toolId === 'string' ? toolId : null
}

/** @returns the lines, those of a job or bench log with the tool's name for a label; a tool that is gone for good leaves the code */
export const withToolNames = async (db: Database, lines: readonly Line[]): Promise<readonly Line[]> => {
  const toolIds = new Map(lines.flatMap((line) => (ofATool.includes(line.noun) ? [[line.id, toolIdOf(line)]] : [])))
  const ids = [...new Set(toolIds.values())].filter((id) => id !== null)
  if (ids.length === 0) return lines
  const tools = await db.selectFrom('tool').select(['id', 'name']).where('id', 'in', ids).execute()
  const names = new Map(tools.map(({ id, name }) => [id, name]))
  return lines.map((line) => ({ ...line, label: names.get(toolIds.get(line.id) ?? '') ?? line.label }))
}

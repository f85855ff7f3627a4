import type BetterSqlite from 'better-sqlite3'
import { dueKey } from '../../main/database/migration6.ts'

/** Nouns whose records are written one change at a time, so that their version counts their lines in the log. */
const NOUNS = ['tool', 'place', 'person', 'loan', 'happening', 'benchLog', 'station', 'dressing'] as const

const STATE = ['holderId', 'dueBack', 'lastGroundAt', 'honings', 'harmed', 'measuredReliefMm', 'lastSeenAt']

/** What in a data file does not agree with itself, each as a statement that finds the rows that are wrong. */
const contradictions: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    NOUNS.map((noun) => [
      `a ${noun} with another version than its log`,
      `SELECT id FROM ${noun} WHERE version <> (SELECT count(*) FROM change WHERE noun = '${noun}' AND entityId = ${noun}.id)`,
    ]),
  ),
  ...Object.fromEntries(
    NOUNS.map((noun) => [
      `a ${noun} that stands or not, other than its log says`,
      `SELECT ${noun}.id FROM ${noun} JOIN change ON change.id = (SELECT max(id) FROM change WHERE noun = '${noun}' AND entityId = ${noun}.id)
        WHERE (deletedAt IS NULL) <> (change.after IS NOT NULL)`,
    ]),
  ),
  'a line of the log without its record': `SELECT id FROM change WHERE noun = 'tool' AND entityId NOT IN (SELECT id FROM tool)`,
  'a group that a crash cut': `SELECT groupId FROM change WHERE groupId IS NOT NULL GROUP BY groupId HAVING min(id) <> groupId OR count(*) < 2`,
  'a code that comes again': `SELECT code FROM tool GROUP BY code HAVING count(*) > 1`,
  'a state that the log does not give': `SELECT toolState.toolId FROM toolState JOIN toolNow USING (toolId)
    WHERE ${STATE.map((column) => `toolState.${column} IS NOT toolNow.${column}`).join(' OR ')}`,
  'a due day that the state does not give': `SELECT toolId FROM toolState WHERE dueKey IS NOT ${dueKey}`,
  'words that the tool does not have': `SELECT toolId FROM toolWords JOIN toolText USING (toolId) WHERE toolWords.words IS NOT toolText.words`,
  'a tool without state or words': `SELECT id FROM tool WHERE id NOT IN (SELECT toolId FROM toolState) OR id NOT IN (SELECT toolId FROM toolWords)`,
  'a key that leads nowhere': 'PRAGMA foreign_key_check',
}

/** @returns everything in which a data file contradicts itself, or is no sound database; nothing: it is whole */
export const faultsWithin = (file: BetterSqlite.Database): readonly string[] => {
  const sound = file.pragma('integrity_check', { simple: true })
  if (sound !== 'ok') return [`integrity_check: ${String(sound)}`]
  file.exec("INSERT INTO toolSearch (toolSearch, rank) VALUES ('integrity-check', 1)")
  return Object.entries(contradictions).flatMap(([name, query]) => {
    const rows = file.prepare(query).all()
    return rows.length === 0 ? [] : [`${name}: ${JSON.stringify(rows[0])} and ${rows.length - 1} more`]
  })
}

import { randomUUID } from 'node:crypto'
import type BetterSqlite from 'better-sqlite3'
import { workshopSearch } from './migration5Search.ts'

/** Columns of a record with a code, as version 5 makes them. */
const coded =
  'id TEXT PRIMARY KEY NOT NULL, version INTEGER NOT NULL CHECK (version >= 1), deletedAt TEXT, code TEXT NOT NULL UNIQUE'

const peopleTables = `
CREATE TABLE place (${coded}, name TEXT NOT NULL, parentId TEXT REFERENCES place (id), note TEXT NOT NULL) STRICT;
CREATE INDEX placeInPlace ON place (parentId);
CREATE TABLE person (${coded}, name TEXT NOT NULL, apprentice TEXT NOT NULL CHECK (apprentice IN ('yes', 'no'))) STRICT;
CREATE TABLE loan (${coded},
  toolId TEXT NOT NULL REFERENCES tool (id), personId TEXT NOT NULL REFERENCES person (id), lentAt TEXT NOT NULL,
  dueBack TEXT, returnedAt TEXT, note TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX oneHolder ON loan (toolId) WHERE returnedAt IS NULL AND deletedAt IS NULL;
CREATE INDEX loanOfTool ON loan (toolId, lentAt);
CREATE INDEX loanOfPerson ON loan (personId, lentAt);`

const workTables = `
CREATE TABLE happening (${coded},
  toolId TEXT NOT NULL REFERENCES tool (id), kind TEXT NOT NULL, at TEXT NOT NULL, who TEXT NOT NULL, note TEXT NOT NULL
) STRICT;
CREATE INDEX happeningOfTool ON happening (toolId, at);
CREATE TABLE dressing (${coded},
  stationId TEXT NOT NULL REFERENCES station (id), kind TEXT NOT NULL, at TEXT NOT NULL, diameterMm REAL NOT NULL,
  barMm REAL, barMeasure TEXT NOT NULL, who TEXT NOT NULL, note TEXT NOT NULL
) STRICT;
CREATE INDEX dressingOfStation ON dressing (stationId, at);
CREATE TABLE stocktake (${coded}, startedAt TEXT NOT NULL, endedAt TEXT, note TEXT NOT NULL) STRICT;
CREATE TABLE sighting (${coded},
  toolId TEXT NOT NULL REFERENCES tool (id), stocktakeId TEXT REFERENCES stocktake (id),
  placeId TEXT REFERENCES place (id), at TEXT NOT NULL, who TEXT NOT NULL
) STRICT;
CREATE INDEX sightingOfTool ON sighting (toolId, at);
CREATE INDEX sightingOfStocktake ON sighting (stocktakeId, toolId);
CREATE TABLE queueEntry (${coded}, toolId TEXT NOT NULL REFERENCES tool (id), onDay TEXT NOT NULL, doneAt TEXT) STRICT;
CREATE UNIQUE INDEX onceADay ON queueEntry (onDay, toolId) WHERE deletedAt IS NULL;`

const extraTables = `
CREATE TABLE photo (${coded},
  toolId TEXT NOT NULL REFERENCES tool (id), mediaType TEXT NOT NULL, widthPx INTEGER NOT NULL, heightPx INTEGER NOT NULL,
  hash TEXT NOT NULL REFERENCES photoBytes (hash), at TEXT NOT NULL, caption TEXT NOT NULL
) STRICT;
CREATE INDEX photoOfTool ON photo (toolId, at);
CREATE TABLE photoBytes (hash TEXT PRIMARY KEY NOT NULL, bytes BLOB NOT NULL) STRICT;
CREATE TABLE purpose (${coded}, name TEXT NOT NULL, note TEXT NOT NULL) STRICT;
CREATE TABLE ownField (${coded}, name TEXT NOT NULL, kind TEXT NOT NULL, unit TEXT NOT NULL, choices TEXT NOT NULL) STRICT;
CREATE TABLE keptFilter (${coded}, name TEXT NOT NULL, asked TEXT NOT NULL) STRICT;
CREATE TABLE toolTemplate (${coded}, name TEXT NOT NULL, draft TEXT NOT NULL) STRICT;`

const moreColumns = `
ALTER TABLE tool ADD COLUMN temperLimitC REAL;
ALTER TABLE tool ADD COLUMN taperDeg REAL NOT NULL DEFAULT 0;
ALTER TABLE tool ADD COLUMN lengthLeftMm REAL;
ALTER TABLE tool ADD COLUMN condition TEXT NOT NULL DEFAULT 'good';
ALTER TABLE tool ADD COLUMN placeId TEXT REFERENCES place (id);
ALTER TABLE tool ADD COLUMN curves TEXT NOT NULL DEFAULT '[]';
ALTER TABLE tool ADD COLUMN own TEXT NOT NULL DEFAULT '{}';
ALTER TABLE tool ADD COLUMN dueDays REAL;
ALTER TABLE tool ADD COLUMN dueHonings REAL;
ALTER TABLE station ADD COLUMN barMount TEXT NOT NULL DEFAULT '';
ALTER TABLE station ADD COLUMN wheelGrit TEXT NOT NULL DEFAULT '';
ALTER TABLE station ADD COLUMN leastDiameterMm REAL;
ALTER TABLE change ADD COLUMN groupId INTEGER REFERENCES change (id);
CREATE INDEX toolAtPlace ON tool (placeId);
CREATE INDEX changeOfGroup ON change (groupId);`

/** A place and a holder were words on the tool; they become a place's record and a loan. */
const givenUpColumns = `
ALTER TABLE tool DROP COLUMN place;
ALTER TABLE tool DROP COLUMN holder;
ALTER TABLE tool DROP COLUMN searchText;`

interface OldTool {
  readonly id: string
  readonly words: string
}

const toolsWith = (file: BetterSqlite.Database, column: 'place' | 'holder'): readonly OldTool[] =>
  file
    .prepare(`SELECT id, trim(${column}) AS words FROM tool WHERE trim(${column}) <> '' ORDER BY length(code), code`)
    .all() as OldTool[]

/** Makes one record for each different word. @returns their ids by word */
const recordsOf = (tools: readonly OldTool[], make: (id: string, words: string, number: number) => void) => {
  const ids = new Map<string, string>()
  for (const { words } of tools) {
    if (ids.has(words)) continue
    const id = randomUUID()
    ids.set(words, id)
    make(id, words, ids.size)
  }
  return ids
}

const countFrom = (file: BetterSqlite.Database, noun: string, last: number): void => {
  if (last > 0) file.prepare('INSERT INTO codeCounter (noun, last) VALUES (?, ?)').run(noun, last)
}

const makePlaces = (file: BetterSqlite.Database): void => {
  const tools = toolsWith(file, 'place')
  const add = file.prepare("INSERT INTO place (id, version, code, name, note) VALUES (?, 1, ?, ?, '')")
  const ids = recordsOf(tools, (id, words, number) => add.run(id, `P${number}`, words))
  const put = file.prepare('UPDATE tool SET placeId = ? WHERE id = ?')
  for (const { id, words } of tools) put.run(ids.get(words), id)
  countFrom(file, 'place', ids.size)
}

const makeLoans = (file: BetterSqlite.Database): void => {
  const tools = toolsWith(file, 'holder')
  const add = file.prepare("INSERT INTO person (id, version, code, name, apprentice) VALUES (?, 1, ?, ?, 'no')")
  const ids = recordsOf(tools, (id, words, number) => add.run(id, `N${number}`, words))
  const lend = file.prepare(
    "INSERT INTO loan (id, version, code, toolId, personId, lentAt, note) VALUES (?, 1, ?, ?, ?, strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '')",
  )
  tools.forEach(({ id, words }, i) => {
    lend.run(randomUUID(), `B${i + 1}`, id, ids.get(words))
  })
  countFrom(file, 'person', ids.size)
  countFrom(file, 'loan', tools.length)
}

/** Places, people, loans, what happens to tools and wheels, pictures, purposes, fields of one's own, and the search over it all. */
export const wholeWorkshop = (file: BetterSqlite.Database): void => {
  file.exec(peopleTables + workTables + extraTables + moreColumns)
  makePlaces(file)
  makeLoans(file)
  file.exec(givenUpColumns + workshopSearch)
}

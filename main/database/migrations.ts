import type BetterSqlite from 'better-sqlite3'
import { wholeWorkshop } from './migration5.ts'
import { makerDueAndSearch } from './migration6.ts'
import { teaching } from './migration7.ts'
import { inLanguages } from './migration8.ts'

/** One step from the schema before to `version`; runs in a transaction of its own. Never edited once released. */
export interface Migration {
  readonly version: number
  /** Digest of the schema that it leaves (`schemaDigest`), by which a file is known for untouched; tests alone have migrations without. */
  readonly schema?: string
  up(file: BetterSqlite.Database): void
}

const recordColumns = `
  id TEXT PRIMARY KEY NOT NULL,
  version INTEGER NOT NULL CHECK (version >= 1),
  deletedAt TEXT`

const codedColumns = `${recordColumns},
  code TEXT NOT NULL UNIQUE`

const rackTables = `
CREATE TABLE tool (${codedColumns},
  name TEXT NOT NULL, kind TEXT NOT NULL, widthMm REAL NOT NULL, thicknessMm REAL NOT NULL, seatAngleDeg REAL,
  bevelSide TEXT NOT NULL CHECK (bevelSide IN ('up', 'down')), bevelAngleDeg REAL NOT NULL, honedBevelDeg REAL,
  projectionMm REAL NOT NULL, reliefMm REAL NOT NULL, shavingDepthMm REAL NOT NULL,
  dotCorner TEXT NOT NULL CHECK (dotCorner IN ('left', 'right')),
  steel TEXT NOT NULL, place TEXT NOT NULL, holder TEXT NOT NULL, note TEXT NOT NULL, searchText TEXT NOT NULL
) STRICT;
CREATE TABLE station (${codedColumns},
  name TEXT NOT NULL, wheelDiameterMm REAL NOT NULL, wheelWidthMm REAL NOT NULL, wheelSpeedRpm REAL NOT NULL,
  maxRimSpeedMPerS REAL NOT NULL, barDiameterMm REAL NOT NULL, barOffsetMm REAL NOT NULL, rotation TEXT NOT NULL,
  cooling TEXT NOT NULL, measuredAt TEXT NOT NULL, note TEXT NOT NULL
) STRICT;
CREATE TABLE fixture (${codedColumns},
  name TEXT NOT NULL, kind TEXT NOT NULL, seatOffsetMm REAL NOT NULL, guideArmMm REAL, screwPitchMm REAL,
  pivotSetbackMm REAL NOT NULL, pivotOffsetMm REAL NOT NULL, note TEXT NOT NULL
) STRICT;`

const jobTables = `
CREATE TABLE job (${codedColumns},
  toolId TEXT NOT NULL REFERENCES tool (id), stationId TEXT NOT NULL REFERENCES station (id),
  fixtureId TEXT NOT NULL REFERENCES fixture (id), document TEXT NOT NULL, toolAim TEXT NOT NULL, usedAt TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX jobInHand ON job (toolId) WHERE deletedAt IS NULL;
CREATE TABLE benchLog (${codedColumns},
  toolId TEXT NOT NULL REFERENCES tool (id), jobId TEXT REFERENCES job (id), stage TEXT NOT NULL,
  reliefLeftMm REAL, reliefRightMm REAL, reliefHalfwayMm REAL, who TEXT NOT NULL, note TEXT NOT NULL, at TEXT NOT NULL,
  engineVersion TEXT, job TEXT, report TEXT
) STRICT;
CREATE INDEX benchLogOfTool ON benchLog (toolId, at);`

const bookTables = `
CREATE TABLE settings (${recordColumns}, lengthUnit TEXT NOT NULL, theme TEXT NOT NULL) STRICT;
CREATE TABLE change (
  id INTEGER PRIMARY KEY AUTOINCREMENT, at TEXT NOT NULL, who TEXT NOT NULL, noun TEXT NOT NULL, entityId TEXT NOT NULL,
  action TEXT NOT NULL, label TEXT NOT NULL, version INTEGER NOT NULL, before TEXT, after TEXT,
  undoes INTEGER REFERENCES change (id), undoneBy INTEGER REFERENCES change (id),
  unasked INTEGER NOT NULL, schemaVersion INTEGER NOT NULL
) STRICT;
CREATE INDEX changeOfEntity ON change (noun, entityId, id);
CREATE TABLE codeCounter (noun TEXT PRIMARY KEY NOT NULL, last INTEGER NOT NULL CHECK (last >= 1)) STRICT;`

/** How sure a reading is follows from how far its leaves lay apart; older lines do not know. */
const leafStep = 'ALTER TABLE benchLog ADD COLUMN leafStepMm REAL'

/** Shaping of the back and cap iron, ways of measuring, and what a fixture learns from. */
const waysOfMeasuring = `
ALTER TABLE tool ADD COLUMN backBevelDeg REAL NOT NULL DEFAULT 0;
ALTER TABLE tool ADD COLUMN capSetbackMm REAL;
ALTER TABLE station ADD COLUMN barMeasure TEXT NOT NULL DEFAULT 'gap';
ALTER TABLE station ADD COLUMN barPlace TEXT NOT NULL DEFAULT 'above';
ALTER TABLE fixture ADD COLUMN seatsOn TEXT NOT NULL DEFAULT 'back';
ALTER TABLE fixture ADD COLUMN learning TEXT NOT NULL DEFAULT 'on';
ALTER TABLE benchLog ADD COLUMN method TEXT NOT NULL DEFAULT 'leaves';
ALTER TABLE benchLog ADD COLUMN points TEXT;
ALTER TABLE benchLog ADD COLUMN groundMinutes REAL;
ALTER TABLE benchLog ADD COLUMN setBackMm REAL;
ALTER TABLE benchLog ADD COLUMN squareGapMm REAL;
ALTER TABLE benchLog ADD COLUMN squareOverMm REAL;
ALTER TABLE benchLog ADD COLUMN counts TEXT NOT NULL DEFAULT 'yes';
ALTER TABLE benchLog ADD COLUMN stationId TEXT;
ALTER TABLE benchLog ADD COLUMN fixtureId TEXT;
ALTER TABLE benchLog ADD COLUMN task TEXT;
ALTER TABLE benchLog ADD COLUMN sweeps REAL;
ALTER TABLE benchLog ADD COLUMN freePlayLeftMm REAL;
ALTER TABLE benchLog ADD COLUMN freePlayRightMm REAL;
ALTER TABLE benchLog ADD COLUMN modelReliefMm REAL;
CREATE INDEX benchLogOfFixture ON benchLog (fixtureId, at);
CREATE INDEX benchLogOfStation ON benchLog (stationId, at);`

/** Shortcuts of a single key may be switched off, and so may the keeping awake of the screen. */
const forEveryone = `
ALTER TABLE settings ADD COLUMN singleKeys TEXT NOT NULL DEFAULT 'on';
ALTER TABLE settings ADD COLUMN stayAwake TEXT NOT NULL DEFAULT 'on';`

/** All migrations in order. A change of the schema is a new entry here, with its snapshot in tests/main/schema. */
export const migrations: readonly Migration[] = [
  {
    version: 1,
    schema: 'ed81aee37cb1714555c9d55eee1e2c710fbbb49ee8ba74c82d1b3cac3724cdc2',
    up: (file) => void file.exec(rackTables + jobTables + bookTables),
  },
  {
    version: 2,
    schema: '109f06da5869ecb82f87d0f387a9f83272ac54c47c61f32056582b06cd98c56d',
    up: (file) => void file.exec(leafStep),
  },
  {
    version: 3,
    schema: 'efa0e43bfe006f0b98f9739eacef4a89b3ebd4a84ae9787d4ffa3c1d469f4e69',
    up: (file) => void file.exec(waysOfMeasuring),
  },
  {
    version: 4,
    schema: 'a4183a6491dd2024ed1d04df12a883203da9e7a578055b8480b75b4039cf68fa',
    up: (file) => void file.exec(forEveryone),
  },
  { version: 5, schema: 'a969efe8f04a63ef78374c95722060ac57558334514ea0d15e7087972c4e59cc', up: wholeWorkshop },
  {
    version: 6,
    schema: '5aefacbccd75a60fe3bee570c46b77df9bbbd20955a85fbe2ffb9c9b635c2a56',
    up: (file) => void file.exec(makerDueAndSearch),
  },
  {
    version: 7,
    schema: '5cf4402eec14f21e320a19c1dd2b9f9786266fec3a439918db65195dfcee03ab',
    up: (file) => void file.exec(teaching),
  },
  {
    version: 8,
    schema: '1cc47183e9434e6cb60b6cfc7613cef597803d9626216d4f93de1a84449ff6fc',
    up: (file) => void file.exec(inLanguages),
  },
]

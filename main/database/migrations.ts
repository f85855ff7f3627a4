import type BetterSqlite from 'better-sqlite3'
import { wholeWorkshop } from './migration5.ts'
import { makerDueAndSearch } from './migration6.ts'
import { teaching } from './migration7.ts'
import { inLanguages } from './migration8.ts'

/** One step from the schema before to `version`; runs in a transaction of its own. Never edited once released. */
export interface Migration {
  readonly version: number
  /** Of the schema it leads to (`schemaMark`), by which a file is told that has something else planted in it. */
  readonly mark: string
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
    up: (file) => void file.exec(rackTables + jobTables + bookTables),
    mark: '6320b1aac1b570831f4a9e24b77239f455feefdda664ffc28399a8e6c8c818df',
  },
  {
    version: 2,
    up: (file) => void file.exec(leafStep),
    mark: 'd3e5dc9b8d14e7eab4d8479034ca8b5e6676b4c05226709efd0fe8fa56404136',
  },
  {
    version: 3,
    up: (file) => void file.exec(waysOfMeasuring),
    mark: 'ec9968a5c67f694057b63f8c3c8d9766b7d4f7e6b9712156e07030e2c66331c6',
  },
  {
    version: 4,
    up: (file) => void file.exec(forEveryone),
    mark: 'f88e9eb7da91345581cefadbcab4e60f0f9d34cbed325309b0408b86ba4b46c8',
  },
  { version: 5, up: wholeWorkshop, mark: '9342b9f1f7ee84ed86ae2d28003798cc0596e7f5d767fad937f09e15fbba8796' },
  {
    version: 6,
    up: (file) => void file.exec(makerDueAndSearch),
    mark: '2238cebd41f35b4f510cae07a8044f94bb1957db86a94af6453c838c684bf986',
  },
  {
    version: 7,
    up: (file) => void file.exec(teaching),
    mark: '4ca3bd686b0177a26e53434d6aa448af576b1baf0e9f11c85e0450db807b66d5',
  },
  {
    version: 8,
    up: (file) => void file.exec(inLanguages),
    mark: 'c814a0669db774b0b393539f6ec514e19da827d689c4f990581d661518f364d8',
  },
]

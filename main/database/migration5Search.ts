/** How deep places may stand in one another; the views below look so far up, and the door refuses more. */
export const MOST_PLACES_DEEP = 6

const depths = Array.from({ length: MOST_PLACES_DEEP - 1 }, (_, i) => i + 1)

/** Columns of `placeChain` that hold the places above one, nearest first. */
export const placesAbove = depths.map((d) => `up${d}`).join(', ')

/** A place with its name's way down from the outermost, and the ids on it; a chain of joins, so that one place is found without reading all. */
const placeChain = `
CREATE VIEW placeChain AS SELECT p0.id AS id,
  ${[...depths]
    .reverse()
    .map((d) => `coalesce(p${d}.name || ' / ', '')`)
    .join(' || ')} || p0.name AS path,
  ${depths.map((d) => `p${d}.id AS up${d}`).join(', ')}
FROM place p0 ${depths.map((d) => `LEFT JOIN place p${d} ON p${d}.id = p${d - 1}.parentId AND p${d}.deletedAt IS NULL`).join(' ')}
WHERE p0.deletedAt IS NULL;`

/** What a tool is found by: all its words, its kind's name, its place, whoever has it, and what its log notes. */
export const toolText = `
CREATE VIEW toolText AS SELECT tool.id AS toolId,
  tool.code || char(10) || tool.name || char(10)
  || coalesce((SELECT words FROM kindName WHERE kindName.kind = tool.kind), '') || char(10) || tool.steel || char(10) || tool.note || char(10)
  || coalesce((SELECT group_concat(value, char(10)) FROM json_each(tool.own)), '') || char(10)
  || coalesce((SELECT path FROM placeChain WHERE placeChain.id = tool.placeId), '') || char(10)
  || coalesce((SELECT person.name FROM loan JOIN person ON person.id = loan.personId
    WHERE loan.toolId = tool.id AND loan.returnedAt IS NULL AND loan.deletedAt IS NULL), '') || char(10)
  || coalesce((SELECT group_concat(note, char(10)) FROM benchLog
    WHERE benchLog.toolId = tool.id AND note <> '' AND deletedAt IS NULL), '') || char(10)
  || coalesce((SELECT group_concat(note, char(10)) FROM happening
    WHERE happening.toolId = tool.id AND note <> '' AND deletedAt IS NULL), '') AS words
FROM tool;`

/** What log, loans and sightings say of a tool now. Everything is looked up for one tool, so that a trigger costs the same in a large file. */
const toolNow = `
CREATE VIEW toolNow AS SELECT known.id AS toolId,
  (SELECT personId FROM loan WHERE toolId = known.id AND returnedAt IS NULL AND deletedAt IS NULL) AS holderId,
  (SELECT dueBack FROM loan WHERE toolId = known.id AND returnedAt IS NULL AND deletedAt IS NULL) AS dueBack,
  nullif(known.groundAt, '') AS lastGroundAt,
  (SELECT count(*) FROM happening WHERE toolId = known.id AND deletedAt IS NULL AND kind = 'honed' AND at > known.groundAt)
    AS honings,
  CASE WHEN EXISTS (SELECT 1 FROM happening WHERE toolId = known.id AND deletedAt IS NULL AND kind <> 'honed'
    AND at > known.groundAt) THEN 'yes' ELSE 'no' END AS harmed,
  (SELECT (reliefLeftMm + reliefRightMm) / 2 FROM benchLog WHERE toolId = known.id AND deletedAt IS NULL
    AND reliefLeftMm IS NOT NULL AND reliefRightMm IS NOT NULL ORDER BY at DESC LIMIT 1) AS measuredReliefMm,
  nullif(max(
    coalesce((SELECT max(at) FROM sighting WHERE toolId = known.id AND deletedAt IS NULL), ''),
    coalesce((SELECT max(at) FROM benchLog WHERE toolId = known.id AND deletedAt IS NULL), ''),
    coalesce((SELECT max(at) FROM happening WHERE toolId = known.id AND deletedAt IS NULL), ''),
    coalesce((SELECT max(coalesce(returnedAt, lentAt)) FROM loan WHERE toolId = known.id AND deletedAt IS NULL), '')
  ), '') AS lastSeenAt
FROM (SELECT id, coalesce((SELECT max(at) FROM benchLog
  WHERE toolId = tool.id AND deletedAt IS NULL AND stage = 'asGround'), '') AS groundAt FROM tool) AS known;`

const keptTables = `
CREATE TABLE kindName (kind TEXT PRIMARY KEY NOT NULL, words TEXT NOT NULL) STRICT;
CREATE INDEX toolStanding ON tool (length(code), code) WHERE deletedAt IS NULL;
CREATE INDEX toolByName ON tool (name COLLATE NOCASE) WHERE deletedAt IS NULL;
CREATE INDEX toolByWidth ON tool (widthMm) WHERE deletedAt IS NULL;
CREATE INDEX loanOut ON loan (dueBack) WHERE returnedAt IS NULL AND deletedAt IS NULL;
CREATE TABLE toolState (toolId TEXT PRIMARY KEY NOT NULL REFERENCES tool (id),
  holderId TEXT REFERENCES person (id), dueBack TEXT, lastGroundAt TEXT, honings INTEGER NOT NULL DEFAULT 0,
  harmed TEXT NOT NULL DEFAULT 'no', measuredReliefMm REAL, lastSeenAt TEXT
) STRICT;
CREATE INDEX toolStateHolder ON toolState (holderId) WHERE holderId IS NOT NULL;
CREATE INDEX toolStateGround ON toolState (lastGroundAt);
CREATE TABLE toolWords (rowId INTEGER PRIMARY KEY NOT NULL, toolId TEXT NOT NULL UNIQUE REFERENCES tool (id), words TEXT NOT NULL) STRICT;
CREATE VIRTUAL TABLE toolSearch USING fts5 (words, content = 'toolWords', content_rowid = 'rowId',
  tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3');`

const stateColumns = 'toolId, holderId, dueBack, lastGroundAt, honings, harmed, measuredReliefMm, lastSeenAt'
const renewState = (which: string) =>
  `INSERT OR REPLACE INTO toolState (${stateColumns}) SELECT ${stateColumns} FROM toolNow WHERE ${which};`
const renewWords = (which: string) =>
  `UPDATE toolWords SET words = (SELECT words FROM toolText WHERE toolText.toolId = toolWords.toolId) WHERE ${which};`

/** Kept by the file itself, so that an undo, an import and a form are all seen alike. */
const keeping = `
CREATE TRIGGER wordsAdded AFTER INSERT ON toolWords BEGIN INSERT INTO toolSearch (rowid, words) VALUES (NEW.rowId, NEW.words); END;
CREATE TRIGGER wordsChanged AFTER UPDATE OF words ON toolWords WHEN OLD.words IS NOT NEW.words BEGIN
  INSERT INTO toolSearch (toolSearch, rowid, words) VALUES ('delete', OLD.rowId, OLD.words);
  INSERT INTO toolSearch (rowid, words) VALUES (NEW.rowId, NEW.words);
END;
CREATE TRIGGER toolAdded AFTER INSERT ON tool BEGIN
  INSERT INTO toolState (toolId) VALUES (NEW.id);
  INSERT INTO toolWords (toolId, words) SELECT toolId, words FROM toolText WHERE toolId = NEW.id;
END;
CREATE TRIGGER toolChanged AFTER UPDATE OF name, kind, steel, note, own, placeId ON tool BEGIN ${renewWords('toolId = NEW.id')} END;
${['benchLog', 'happening', 'loan', 'sighting']
  .flatMap((noun) =>
    ['INSERT', 'UPDATE'].map(
      (doing) =>
        `CREATE TRIGGER ${noun}${doing === 'INSERT' ? 'Added' : 'Changed'} AFTER ${doing} ON ${noun} BEGIN ${renewState('toolId = NEW.toolId')}${
          noun === 'loan' ? ` ${renewWords('toolId = NEW.toolId')}` : ''
        } END;`,
    ),
  )
  .join('\n')}
${['benchLog', 'happening']
  .flatMap((noun) => [
    `CREATE TRIGGER ${noun}Noted AFTER INSERT ON ${noun} WHEN NEW.note <> '' BEGIN ${renewWords('toolId = NEW.toolId')} END;`,
    `CREATE TRIGGER ${noun}NoteChanged AFTER UPDATE ON ${noun} WHEN NEW.note <> '' OR OLD.note <> '' BEGIN ${renewWords('toolId = NEW.toolId')} END;`,
  ])
  .join('\n')}
CREATE TRIGGER kindNamed AFTER INSERT ON kindName BEGIN
  ${renewWords('toolId IN (SELECT id FROM tool WHERE kind = NEW.kind)')}
END;
CREATE TRIGGER kindRenamed AFTER UPDATE ON kindName BEGIN
  ${renewWords('toolId IN (SELECT id FROM tool WHERE kind = NEW.kind)')}
END;
CREATE TRIGGER placeChanged AFTER UPDATE ON place BEGIN
  ${renewWords(
    `toolId IN (SELECT tool.id FROM tool WHERE placeId = NEW.id OR placeId IN
      (SELECT id FROM placeChain WHERE NEW.id IN (${placesAbove})))`,
  )}
END;
CREATE TRIGGER personChanged AFTER UPDATE OF name ON person BEGIN
  ${renewWords('toolId IN (SELECT toolId FROM toolState WHERE holderId = NEW.id)')}
END;`

const filling = `
INSERT INTO toolState (${stateColumns}) SELECT ${stateColumns} FROM toolNow;
INSERT INTO toolWords (toolId, words) SELECT toolId, words FROM toolText;`

/** What is kept ready so that a hundred thousand tools are found and sorted at once. */
export const workshopSearch = placeChain + toolText + toolNow + keptTables + keeping + filling

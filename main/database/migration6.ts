import { toolText } from './migration5Search.ts'

/** The words of version 5 with the maker's among them. */
const withMaker = toolText.replace('|| tool.steel ||', '|| tool.maker || char(10) || tool.steel ||')

/** Who made a tool, as free words, found like all others. */
const maker = `
ALTER TABLE tool ADD COLUMN maker TEXT NOT NULL DEFAULT '';
DROP TRIGGER toolChanged;
DROP VIEW toolText;
${withMaker}
CREATE TRIGGER toolChanged AFTER UPDATE OF name, kind, maker, steel, note, own, placeId ON tool BEGIN
  UPDATE toolWords SET words = (SELECT words FROM toolText WHERE toolText.toolId = toolWords.toolId) WHERE toolId = NEW.id;
END;`

/**
 * When an iron is due, as words that sort: `0` by its state, `1` by use, `2` and the moment from which it is by time, `3`
 * never. An iron that was put by is never due; one whose grind nobody noted cannot be due by time.
 */
export const dueKey = `(SELECT coalesce(CASE
  WHEN tool.deletedAt IS NOT NULL OR tool.condition = 'retired' THEN '3'
  WHEN toolState.harmed = 'yes' OR tool.condition = 'damaged' THEN '0'
  WHEN toolState.honings >= tool.dueHonings THEN '1'
  ELSE '2' || strftime('%Y-%m-%dT%H:%M:%fZ', julianday(toolState.lastGroundAt) + tool.dueDays)
END, '3') FROM tool WHERE tool.id = toolState.toolId)`

/** Kept ready, so that what is due is listed and counted without looking at all else. */
const due = `
ALTER TABLE toolState ADD COLUMN dueKey TEXT NOT NULL DEFAULT '3';
UPDATE toolState SET dueKey = ${dueKey};
CREATE INDEX toolStateDue ON toolState (dueKey);
CREATE INDEX toolByRelief ON tool (reliefMm) WHERE deletedAt IS NULL;
CREATE TRIGGER stateAdded AFTER INSERT ON toolState BEGIN
  UPDATE toolState SET dueKey = ${dueKey} WHERE toolId = NEW.toolId;
END;
CREATE TRIGGER dueChanged AFTER UPDATE OF condition, dueDays, dueHonings, deletedAt ON tool BEGIN
  UPDATE toolState SET dueKey = ${dueKey} WHERE toolId = NEW.id;
END;`

/** Beginnings of up to five letters have an index of their own: words are mostly told apart by then, and typed no further. */
const search = `
DROP TABLE toolSearch;
CREATE VIRTUAL TABLE toolSearch USING fts5 (words, content = 'toolWords', content_rowid = 'rowId',
  tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3 4 5');
INSERT INTO toolSearch (toolSearch) VALUES ('rebuild');`

/** Which columns the list shows, and how much all copies of the data may weigh. */
const settings = `
ALTER TABLE settings ADD COLUMN columns TEXT NOT NULL DEFAULT '';
ALTER TABLE settings ADD COLUMN copiesMostMb REAL NOT NULL DEFAULT 500;`

/** A tool's maker, when it is due, and a quicker search. */
export const makerDueAndSearch = maker + due + search + settings

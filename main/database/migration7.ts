/**
 * Lessons that the workshop wrote itself, and what is known of those who learn. The latter stands outside the change log:
 * it is about people, so it is written over and goes whole, with no earlier states that would keep it.
 */
export const teaching = `
CREATE TABLE lesson (id TEXT PRIMARY KEY NOT NULL, version INTEGER NOT NULL CHECK (version >= 1), deletedAt TEXT,
  code TEXT NOT NULL UNIQUE, lessonId TEXT NOT NULL, title TEXT NOT NULL, document TEXT NOT NULL) STRICT;
CREATE TABLE progress (personId TEXT NOT NULL, lessonId TEXT NOT NULL, step INTEGER NOT NULL CHECK (step >= 0),
  answers TEXT NOT NULL, startedAt TEXT NOT NULL, at TEXT NOT NULL, doneAt TEXT,
  PRIMARY KEY (personId, lessonId)) STRICT;
CREATE TABLE authorisation (personId TEXT PRIMARY KEY NOT NULL, at TEXT NOT NULL, who TEXT NOT NULL) STRICT;
CREATE TABLE setWork (personId TEXT NOT NULL, lessonId TEXT NOT NULL, setAt TEXT NOT NULL, dueOn TEXT,
  PRIMARY KEY (personId, lessonId)) STRICT;
CREATE TRIGGER learnerGone AFTER UPDATE OF deletedAt ON person WHEN NEW.deletedAt IS NOT NULL BEGIN
  DELETE FROM progress WHERE personId = NEW.id;
  DELETE FROM authorisation WHERE personId = NEW.id;
  DELETE FROM setWork WHERE personId = NEW.id;
END;`

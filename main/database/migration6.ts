import { toolText } from './migration5Search.ts'

/** The words of version 5 with the maker's among them. */
const withMaker = toolText.replace('|| tool.steel ||', '|| tool.maker || char(10) || tool.steel ||')

/** Who made a tool, as free words, found like all others. */
export const toolMaker = `
ALTER TABLE tool ADD COLUMN maker TEXT NOT NULL DEFAULT '';
DROP TRIGGER toolChanged;
DROP VIEW toolText;
${withMaker}
CREATE TRIGGER toolChanged AFTER UPDATE OF name, kind, maker, steel, note, own, placeId ON tool BEGIN
  UPDATE toolWords SET words = (SELECT words FROM toolText WHERE toolText.toolId = toolWords.toolId) WHERE toolId = NEW.id;
END;`

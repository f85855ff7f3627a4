import { language } from '../contract/language.ts'
import { speak } from '../contract/texts.ts'
import type { Database } from '../database/schema.ts'
import { noteKindNames } from '../rack/kindNames.ts'
import { readSettings } from './settings.ts'

/** Has this thread speak the workshop's language, and writes down what kinds of tools are called in it. */
export const speakHere = async (db: Database): Promise<void> => {
  const wanted = (await readSettings(db)).language
  if (wanted !== language()) await speak(wanted)
  await noteKindNames(db)
}

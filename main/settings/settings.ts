import { ok } from '../../geometry/result.ts'
import { type Settings, settingsSchema } from '../contract/entities.ts'
import { languageOfLocale } from '../contract/language.ts'
import { commitStep } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import { findRecord, type NounStore, type Row, type Stored, versionOf, withoutMark } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import type { Services } from '../services.ts'

/** The workshop has one set of settings, so its record has one name. */
const SETTINGS_ID = 'workshop'

type SettingsRecord = Settings & Stored

/** Settings of the workshop: no row until somebody changes one. */
export const settingsStore: NounStore<SettingsRecord> = {
  noun: 'settings',
  labelOf: () => 'settings',
  toRow: (settings) => ({ ...settings }),
  fromRow: (row: Row) => withoutMark(row) as unknown as SettingsRecord,
}

const settingsOf = ({ id: _, version: __, ...settings }: SettingsRecord): Settings => settings

/** @returns the settings as they stand, or the defaults, in the language of the system */
export const readSettings = async (db: Database): Promise<Settings> => {
  const record = await findRecord(db, settingsStore, SETTINGS_ID)
  return record === null ? settingsSchema.parse({ language: languageOfLocale() }) : settingsOf(record)
}

const writeSettings = async (db: Database, desk: Desk, settings: Settings) => {
  const before = await findRecord(db, settingsStore, SETTINGS_ID)
  const seen = await versionOf(db, 'settings', SETTINGS_ID)
  const after = { ...settings, id: SETTINGS_ID, version: 1 }
  const action = before === null ? 'added' : 'edited'
  return commitStep(db, desk, settingsStore, { id: SETTINGS_ID, seen, before, after, action })
}

/** The calls of the settings. */
export const settingsServices = (desk: Desk): Pick<Services, 'settings.get' | 'settings.edit'> => ({
  'settings.get': async () => ok(await desk.access.read(readSettings)),
  'settings.edit': async (settings, context) => {
    const made = await desk.access.write((db) => writeSettings(db, desk, settings))
    if (!made.ok) return made
    context.changed('settings', [SETTINGS_ID])
    return ok({ value: settingsOf(made.value.value), changeId: made.value.changeId })
  },
})

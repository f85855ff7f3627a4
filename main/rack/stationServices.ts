import { ok, type Result } from '../../geometry/result.ts'
import type { Station } from '../contract/entities.ts'
import type { Dressing } from '../contract/work.ts'
import { asOne, type Made, onlyValue } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import { listOf, needRecord } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import type { CallContext, Services } from '../services.ts'
import { addRecord, editRecord, named, recordServices } from './recordServices.ts'
import { dressingStore, stationStore } from './stores.ts'

type Seen = { readonly id: string; readonly version: number }
type Fields<T> = Omit<T, 'id' | 'code' | 'version'>

/** Edits a station; a wheel of another diameter is a line of its log, too. */
const editStation = async (
  db: Database,
  desk: Desk,
  { id, version }: Seen,
  draft: Fields<Station>,
): Promise<Result<Station>> => {
  const before = await needRecord(db, stationStore, id)
  if (!before.ok) return before
  const edited = await editRecord(db, desk, stationStore, { id, version }, draft)
  if (!edited.ok || before.value.wheelDiameterMm === draft.wheelDiameterMm) return onlyValue(edited)
  const { wheelDiameterMm: diameterMm, measuredAt: at, barMeasure } = draft
  const line = { stationId: id, kind: 'measured' as const, at, diameterMm, barMm: null, barMeasure, who: '', note: '' }
  const noted = await addRecord(db, desk, dressingStore, line)
  return noted.ok ? onlyValue(edited) : noted
}

/** Notes a wheel dressed or measured; the newest line says what the station's wheel is. */
const addDressing = async (db: Database, desk: Desk, draft: Fields<Dressing>): Promise<Result<Dressing>> => {
  const station = await needRecord(db, stationStore, draft.stationId, 'stationId')
  if (!station.ok) return station
  const added = await addRecord(db, desk, dressingStore, draft)
  if (!added.ok) return added
  if (draft.at >= station.value.measuredAt) {
    const wheel = { wheelDiameterMm: draft.diameterMm, measuredAt: draft.at }
    const edited = await editRecord(db, desk, stationStore, station.value, wheel)
    if (!edited.ok) return edited
  }
  return onlyValue(added)
}

/** The calls about stations and the log of their wheels, which never say two things of a diameter. */
export const stationServices = (
  desk: Desk,
): Pick<Services, `${'station' | 'dressing'}.${'list' | 'add' | 'edit' | 'remove'}`> => {
  const tell = <T>(made: Result<Made<T>>, context: CallContext): Result<Made<T>> => {
    if (!made.ok) return made
    context.changed('station', [])
    context.changed('dressing', [])
    return made
  }
  return {
    ...named('station', recordServices(desk, stationStore)),
    ...named('dressing', recordServices(desk, dressingStore)),
    'station.edit': async ({ draft, ...seen }, context) =>
      tell(await desk.access.write((db) => asOne(db, () => editStation(db, desk, seen, draft))), context),
    'dressing.list': async ({ stationId }) =>
      ok(await desk.access.read((db) => listOf(db, dressingStore, { column: 'stationId', id: stationId, by: 'at' }))),
    'dressing.add': async (draft, context) =>
      tell(await desk.access.write((db) => asOne(db, () => addDressing(db, desk, draft))), context),
  }
}

import type { Station } from '../contract/entities.ts'
import { type CodedStore, withoutMark } from '../database/recordStore.ts'

/** Grinders as they stand. */
export const stationStore: CodedStore<Station> = {
  noun: 'station',
  labelOf: ({ name }) => name,
  toRow: (station) => station,
  fromRow: (row) => withoutMark(row) as unknown as Station,
}

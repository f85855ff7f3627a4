import type { Fixture } from '../contract/entities.ts'
import { type CodedStore, withoutMark } from '../database/recordStore.ts'

/** What holds a blade on the bar. */
export const fixtureStore: CodedStore<Fixture> = {
  noun: 'fixture',
  labelOf: ({ name }) => name,
  toRow: (fixture) => fixture,
  fromRow: (row) => withoutMark(row) as unknown as Fixture,
}

import type { Fixture, Station } from '../contract/entities.ts'
import type { KeptFilter, OwnField, Photo, Purpose, ToolTemplate } from '../contract/extras.ts'
import type { Loan, Person, Place } from '../contract/people.ts'
import type { Dressing, Happening, QueueEntry, Sighting, Stocktake } from '../contract/work.ts'
import { jsonStore, plainStore } from '../database/recordStore.ts'

/** How the workshop's nouns lie in their tables. */
export const stationStore = plainStore<Station>('station', ({ name }) => name)
export const fixtureStore = plainStore<Fixture>('fixture', ({ name }) => name)
export const placeStore = plainStore<Place>('place', ({ name }) => name, { parentId: 'place' })
export const personStore = plainStore<Person>('person', ({ name }) => name)
export const loanStore = plainStore<Loan>('loan', ({ code }) => code, { toolId: 'tool', personId: 'person' })
export const happeningStore = plainStore<Happening>('happening', ({ code }) => code, { toolId: 'tool' })
export const dressingStore = plainStore<Dressing>('dressing', ({ code }) => code, { stationId: 'station' })
export const photoStore = plainStore<Photo>('photo', ({ caption, code }) => caption || code, { toolId: 'tool' })
export const purposeStore = plainStore<Purpose>('purpose', ({ name }) => name)
export const ownFieldStore = jsonStore<OwnField>('ownField', ({ name }) => name, ['choices'])
export const keptFilterStore = plainStore<KeptFilter>('keptFilter', ({ name }) => name)
export const toolTemplateStore = plainStore<ToolTemplate>('toolTemplate', ({ name }) => name)
export const stocktakeStore = plainStore<Stocktake>('stocktake', ({ code }) => code)
export const sightingStore = plainStore<Sighting>('sighting', ({ code }) => code, {
  toolId: 'tool',
  stocktakeId: 'stocktake',
  placeId: 'place',
})
export const queueEntryStore = plainStore<QueueEntry>('queueEntry', ({ code }) => code, { toolId: 'tool' })

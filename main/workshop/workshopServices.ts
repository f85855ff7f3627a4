import { ok } from '../../geometry/result.ts'
import { ENGINE_VERSION } from '../../geometry/version.ts'
import program from '../../package.json' with { type: 'json' }
import { backupFolder } from '../backup/copies.ts'
import type { CallName } from '../contract/calls.ts'
import { nouns } from '../contract/entities.ts'
import type { Desk } from '../database/desk.ts'
import { listChanges, type Stores, undoChange } from '../database/undo.ts'
import { countTools } from '../rack/tool.ts'
import type { Services } from '../services.ts'
import type { Workshop } from './workshop.ts'

type WorkshopCalls = Extract<CallName, `workshop.${string}`>

/** The calls that say which rack is open, and open the other. */
export const workshopServices = (workshop: Workshop): Pick<Services, WorkshopCalls> => ({
  'workshop.get': async () => {
    const tools = await workshop.desk.access.read(countTools)
    return ok({ rack: workshop.rack(), tools, tourSeen: workshop.tourSeen(), notices: [...workshop.notices()] })
  },
  'workshop.open': async ({ rack }, context) => {
    const opened = await workshop.open(rack)
    if (!opened.ok) return opened
    for (const noun of nouns) context.changed(noun, [])
    return ok({ rack })
  },
  'workshop.about': async () => {
    const file = workshop.path()
    return ok({ version: program.version, engine: ENGINE_VERSION, file, copies: backupFolder(file) })
  },
  'workshop.toured': async () => {
    workshop.noteTourSeen()
    return ok(null)
  },
})

/** The calls of the change log. */
export const changeServices = (desk: Desk, stores: Stores): Pick<Services, 'change.list' | 'change.undo'> => ({
  'change.list': async (asked) => ok(await desk.access.read((db) => listChanges(db, asked))),
  'change.undo': async ({ id }, context) => {
    const undone = await desk.access.write((db) => undoChange(db, desk, stores, id))
    if (!undone.ok) return undone
    const { change, touched } = undone.value
    for (const [noun, records] of Map.groupBy(touched, (record) => record.noun))
      context.changed(
        noun,
        records.map(({ entityId }) => entityId),
      )
    return ok(change)
  },
})

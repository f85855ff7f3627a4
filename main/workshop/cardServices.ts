import { setImmediate } from 'node:timers/promises'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { MadeCard, makeCard } from '../cards/makeCard.ts'
import type { Desk } from '../database/desk.ts'
import { jobRecordOf } from '../job/job.ts'
import { jobInHand } from '../job/jobServices.ts'
import type { Services } from '../services.ts'
import { readSettings } from '../settings/settings.ts'
import type { Blobs } from './blobs.ts'

/** @param signal ends the work itself */
export type MakeCard = (given: Parameters<typeof makeCard>, signal: AbortSignal) => Promise<Result<MadeCard>>

const cancelled = failed(problem('cancelled'))

/** The task that makes a job's card. @param make draws it */
export const cardServices = (desk: Desk, blobs: Blobs, make: MakeCard): Pick<Services, 'card.make'> => ({
  'card.make': async ({ id }, { signal, progress }) => {
    progress(0)
    const found = await desk.access.read((db) => jobInHand(db, id))
    if (!found.ok) return found
    const { lengthUnit } = await desk.access.read(readSettings)
    await setImmediate()
    if (signal.aborted) return cancelled
    const input = { ...found.value, job: jobRecordOf(found.value.job) }
    const card = await make([input, desk.now(), lengthUnit], signal)
    if (signal.aborted) return cancelled
    if (!card.ok) return card
    const blobId = desk.newId()
    blobs.put(blobId, card.value, 'application/pdf')
    progress(1)
    return ok({ blobId, fileName: card.value.fileName })
  },
})

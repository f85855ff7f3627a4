import { setImmediate } from 'node:timers/promises'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { CardInput, MadeFile, makeCard } from '../cards/makeCard.ts'
import type { Settings } from '../contract/entities.ts'
import type { Desk } from '../database/desk.ts'
import { jobRecordOf } from '../job/job.ts'
import { jobInHand } from '../job/jobServices.ts'
import { holderOf } from '../rack/tool.ts'
import type { CallContext, Services } from '../services.ts'
import { readSettings } from '../settings/settings.ts'
import type { makeTemplate, TemplateChoice } from '../template/makeTemplate.ts'
import type { Blobs } from './blobs.ts'

/** Draws a page elsewhere. @param signal ends the work itself */
export type Draw<Given> = (given: Given, signal: AbortSignal) => Promise<Result<MadeFile>>

const cancelled = failed(problem('cancelled'))

const mediaTypes = { pdf: 'application/pdf', svg: 'image/svg+xml', dxf: 'image/vnd.dxf' } as const

/** What every page is drawn from, as the rack holds it now. */
interface Given {
  readonly input: CardInput
  readonly lengthUnit: Settings['lengthUnit']
}

const read = async ({ access }: Desk, id: string): Promise<Result<Given>> => {
  const found = await access.read((db) => jobInHand(db, id))
  if (!found.ok) return found
  const { lengthUnit } = await access.read(readSettings)
  const holder = await access.read((db) => holderOf(db, found.value.tool.id))
  return ok({ input: { ...found.value, job: jobRecordOf(found.value.job), holder }, lengthUnit })
}

/** The tasks that draw a job's pages, kept as blobs for whoever asked. */
export const paperServices = (
  desk: Desk,
  blobs: Blobs,
  drawCard: Draw<Parameters<typeof makeCard>>,
  drawTemplate: Draw<Parameters<typeof makeTemplate>>,
): Pick<Services, 'card.make' | 'template.make'> => {
  const make = async (
    id: string,
    mediaType: string,
    { signal, progress }: CallContext,
    draw: (given: Given) => Promise<Result<MadeFile>>,
  ) => {
    progress(0)
    const given = await read(desk, id)
    if (!given.ok) return given
    await setImmediate()
    if (signal.aborted) return cancelled
    const made = await draw(given.value)
    if (signal.aborted) return cancelled
    if (!made.ok) return made
    const blobId = desk.newId()
    blobs.put(blobId, made.value, mediaType)
    progress(1)
    return ok({ blobId, fileName: made.value.fileName })
  }
  return {
    'card.make': ({ id }, context) =>
      make(id, mediaTypes.pdf, context, ({ input, lengthUnit }) =>
        drawCard([input, desk.now(), lengthUnit], context.signal),
      ),
    'template.make': ({ id, ...choice }, context) =>
      make(id, mediaTypes[choice.form], context, ({ input, lengthUnit }) =>
        drawTemplate([input, choice satisfies TemplateChoice, desk.now(), lengthUnit], context.signal),
      ),
  }
}

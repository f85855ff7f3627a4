import { ok, type Result } from '../../geometry/result.ts'
import type { CardInput, makeCard } from '../cards/makeCard.ts'
import type { Settings } from '../contract/entities.ts'
import type { Desk } from '../database/desk.ts'
import { jobRecordOf } from '../job/job.ts'
import { jobInHand } from '../job/jobServices.ts'
import { holderOf } from '../rack/tool.ts'
import type { Services } from '../services.ts'
import { readSettings } from '../settings/settings.ts'
import type { makeTemplate, TemplateChoice } from '../template/makeTemplate.ts'
import type { Blobs } from './blobs.ts'
import { type Draw, paperMaker } from './paperMaker.ts'

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
  const make = paperMaker(desk, blobs)
  return {
    'card.make': ({ id, form }, context) =>
      make(
        mediaTypes[form],
        context,
        () => read(desk, id),
        ({ input, lengthUnit }) => drawCard([input, desk.now(), lengthUnit, form], context.signal),
      ),
    'template.make': ({ id, ...choice }, context) =>
      make(
        mediaTypes[choice.form],
        context,
        () => read(desk, id),
        ({ input, lengthUnit }) =>
          drawTemplate([input, choice satisfies TemplateChoice, desk.now(), lengthUnit], context.signal),
      ),
  }
}

import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { CardInput, MadeCards, makeCards } from '../cards/makeCard.ts'
import type { QueueLine } from '../contract/day.ts'
import type { Desk } from '../database/desk.ts'
import type { Database } from '../database/schema.ts'
import { jobToday } from '../job/jobServices.ts'
import type { Services } from '../services.ts'
import { readSettings } from '../settings/settings.ts'
import type { Blobs } from '../workshop/blobs.ts'
import { type Draw, paperMaker } from '../workshop/paperMaker.ts'
import { dayQueue } from './dayQueue.ts'
import type { makeDaySheet } from './makeDaySheet.ts'

const linesOf = async (db: Database, desk: Desk, onDay: string): Promise<Result<QueueLine[]>> => {
  const { lines } = await dayQueue(db, onDay, desk.now().toISOString())
  return lines.length === 0 ? failed(problem('dayEmpty')) : ok(lines)
}

/** What the cards of the irons that are still to be ground are drawn from. */
const cardsOf = async (db: Database, desk: Desk, onDay: string): Promise<Result<CardInput[]>> => {
  const lines = await linesOf(db, desk, onDay)
  if (!lines.ok) return lines
  const open = lines.value.filter(({ entry }) => entry.doneAt === null)
  const inputs: CardInput[] = []
  for (const { tool } of open.length > 0 ? open : lines.value) {
    const job = await jobToday(db, tool.id)
    if (!job.ok) return job
    inputs.push({ ...job.value, holder: tool.holder })
  }
  return ok(inputs)
}

/** The tasks that put a day on paper. */
export const dayPaperServices = (
  desk: Desk,
  blobs: Blobs,
  drawCards: Draw<Parameters<typeof makeCards>, MadeCards>,
  drawSheet: Draw<Parameters<typeof makeDaySheet>>,
): Pick<Services, 'queueEntry.sheet' | 'queueEntry.cards'> => {
  const make = paperMaker(desk, blobs)
  const unit = async () => (await desk.access.read(readSettings)).lengthUnit
  return {
    'queueEntry.sheet': ({ onDay }, context) =>
      make(
        'application/pdf',
        context,
        () => desk.access.read((db) => linesOf(db, desk, onDay)),
        async (lines) => drawSheet([{ onDay, lines, lengthUnit: await unit() }, desk.now()], context.signal),
      ),
    'queueEntry.cards': async ({ onDay }, context) => {
      let without: readonly string[] = []
      const made = await make(
        'application/pdf',
        context,
        () => desk.access.read((db) => cardsOf(db, desk, onDay)),
        async (inputs) => {
          const drawn = await drawCards([inputs, onDay, desk.now(), await unit()], context.signal)
          if (drawn.ok) without = drawn.value.without
          return drawn
        },
      )
      return made.ok ? ok({ ...made.value, without: [...without] }) : made
    },
  }
}

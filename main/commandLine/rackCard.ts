import type { TFunction } from 'i18next'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { makeCard } from '../cards/makeCard.ts'
import { codeOfNoun } from '../contract/codes.ts'
import { findByCode } from '../database/recordStore.ts'
import { jobToday } from '../job/jobServices.ts'
import { holderOf, toolStore } from '../rack/tool.ts'
import { readSettings } from '../settings/settings.ts'
import type { Workshop } from '../workshop/workshop.ts'
import { type CommandEnd, done, inJson, refusedFor } from './commandEnd.ts'
import { withRack } from './openRack.ts'
import { cardKind, mayWrite, writeWhole } from './outFile.ts'
import { readRackArgs } from './rackPlace.ts'
import { endOf } from './rackWork.ts'

interface CardFile {
  readonly tool: string
  readonly file: string
}

/** The card of the job that a tool has in hand, or of a first one; with today's wheel, bar and fixture. */
const writeCard = async ({ desk }: Workshop, { tool, file }: CardFile): Promise<Result<CardFile>> => {
  const found = await desk.access.read(async (db) => {
    const known = await findByCode(db, toolStore, codeOfNoun('tool', tool) ?? '')
    if (known === null || known.removed) return failed(problem('rackToolUnknown', '', { code: tool }))
    const job = await jobToday(db, known.record.id)
    if (!job.ok) return job
    const { lengthUnit } = await readSettings(db)
    return ok({ input: { ...job.value, holder: await holderOf(db, known.record.id) }, lengthUnit })
  })
  if (!found.ok) return found
  const card = await makeCard(found.value.input, desk.now(), found.value.lengthUnit)
  const written = card.ok ? writeWhole(file, card.value.bytes) : card
  return written.ok ? ok({ tool, file }) : written
}

/** Writes the card of a tool of the rack. */
export const runRackCard = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const call = readRackArgs(args, {}, [2, 2])
  if (!call.ok) return refusedFor(t, call.problems)
  const [tool = '', file = ''] = call.value.words
  const may = mayWrite(file, cardKind)
  if (!may.ok) return refusedFor(t, may.problems)
  const written = await withRack(call.value.place, {}, (workshop) => writeCard(workshop, { tool, file }))
  return endOf(t, written, (value) => done(inJson(value)))
}

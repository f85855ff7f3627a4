import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { readTypedOrMark } from '../contract/codes.ts'
import { checkSheet } from '../contract/labelPlaces.ts'
import { positionCount } from '../contract/labelSheets.ts'
import type { FoundByCode, LabelItem } from '../contract/labels.ts'
import type { Desk } from '../database/desk.ts'
import { type CodedStore, findByCode, needRecord, type Stored } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import type { Services } from '../services.ts'
import { readSettings } from '../settings/settings.ts'
import { createTexts } from '../texts.ts'
import type { Blobs } from '../workshop/blobs.ts'
import { type Draw, paperMaker } from '../workshop/paperMaker.ts'
import { type LabelFacts, labelled } from './labelFacts.ts'
import type { makeLabels } from './makeLabels.ts'

const find = async (db: Database, text: string): Promise<FoundByCode | null> => {
  const read = readTypedOrMark(text)
  if (read === null) return null
  const store = labelled[read.noun].store as CodedStore<Stored & { readonly code: string; readonly name: string }>
  const found = await findByCode(db, store, read.code)
  return (
    found && { noun: read.noun, id: found.record.id, code: read.code, name: found.record.name, removed: found.removed }
  )
}

const factsOf = async (db: Database, items: readonly LabelItem[]): Promise<Result<readonly LabelFacts[]>> => {
  const { lengthUnit } = await readSettings(db)
  const t = createTexts().t
  const facts: LabelFacts[] = []
  for (const [i, { noun, id }] of items.entries()) {
    const { store, factsOf: write } = labelled[noun]
    const record = await needRecord(db, store as CodedStore<never>, id, `items.${i}`)
    if (!record.ok) return record
    facts.push(await write(record.value, { db, t, lengthUnit }))
  }
  return ok(facts)
}

/** What a code stands for, and the labels that carry them. */
export const labelServices = (
  desk: Desk,
  blobs: Blobs,
  drawLabels: Draw<Parameters<typeof makeLabels>>,
): Pick<Services, 'code.find' | 'label.make'> => {
  const make = paperMaker(desk, blobs)
  return {
    'code.find': async ({ code }) => ok(await desk.access.read((db) => find(db, code))),
    'label.make': async ({ items, sheet, first, outlines }, context) => {
      const checked = checkSheet(sheet)
      if (!checked.ok) return checked
      const most = positionCount(sheet)
      if (first > most) return failed(problem('labelFirstBeyond', 'first', { most }))
      return make(
        'application/pdf',
        context,
        () => desk.access.read((db) => factsOf(db, items)),
        (labels) => drawLabels([labels, { sheet, first, outlines }, desk.now()], context.signal),
      )
    },
  }
}

import { sql } from 'kysely'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { backUp } from '../backup/backUp.ts'
import type { Offer as Asked } from '../contract/inOut.ts'
import { asOne } from '../database/change.ts'
import { faultText } from '../database/fault.ts'
import type { CallContext, Services } from '../services.ts'
import { readSettings } from '../settings/settings.ts'
import type { Blobs } from '../workshop/blobs.ts'
import type { Workshop } from '../workshop/workshop.ts'
import { bringIn, lookAt } from './bringIn.ts'
import { type OpenedFile, openFile } from './openFile.ts'
import { takeOut } from './takeOut.ts'

const mediaTypes = {
  csv: 'text/csv; charset=utf-8',
  json: 'application/json',
  bundle: 'application/zip',
} as const

/** An import can be large: a copy of the data is made before it, and where none can be made nothing is brought in. */
const copyBefore = (workshop: Workshop): Promise<Result<null>> =>
  workshop.desk.access.read(async () => {
    try {
      backUp(workshop.path(), workshop.desk.now())
      return ok(null)
    } catch (error) {
      return failed(problem('backupFailed', '', { detail: faultText(error) }))
    }
  })

type InOutCalls = 'inOut.take' | 'inOut.look' | 'inOut.bring'

/** The tasks that write the rack to a file and read one into it. */
export const inOutServices = (workshop: Workshop, blobs: Blobs): Pick<Services, InOutCalls> => {
  const { desk } = workshop
  const open = async (asked: Asked): Promise<Result<OpenedFile>> => {
    const file = blobs.get(asked.blobId)
    if (!file) return failed(problem('fileGone', 'blobId'))
    const { lengthUnit } = await desk.access.read(readSettings)
    return openFile(file.bytes, asked, lengthUnit)
  }
  const write = async (opened: OpenedFile, leaveOut: boolean, context: CallContext) => {
    const copied = await copyBefore(workshop)
    if (!copied.ok) return copied
    return desk.access.write(async (db) => {
      // Places stand in one another and are written in the order of the file.
      await sql`PRAGMA defer_foreign_keys = ON`.execute(db)
      return asOne(db, () => bringIn(db, desk, opened.offer, leaveOut, context))
    })
  }
  return {
    'inOut.take': async (asked, { progress }) => {
      progress(0)
      const made = await desk.access.read((db) => takeOut(db, asked))
      if (!made.ok) return made
      const blobId = desk.newId()
      blobs.put(blobId, made.value, mediaTypes[asked.form])
      progress(1)
      return ok({ blobId, fileName: made.value.fileName })
    },
    'inOut.look': async (asked, context) => {
      const opened = await open(asked)
      if (!opened.ok) return opened
      const { form, offer, table } = opened.value
      const outlook = await desk.access.read((db) => lookAt(db, desk, offer, context))
      if (!outlook.ok) return outlook
      const [first, ...others] = offer.nouns
      return ok({ form, noun: others.length === 0 && first ? first.noun : null, table, ...outlook.value })
    },
    'inOut.bring': async ({ leaveOut, ...asked }, context) => {
      const opened = await open(asked)
      if (!opened.ok) return opened
      const made = await write(opened.value, leaveOut, context)
      if (!made.ok) return made
      for (const { noun } of opened.value.offer.nouns) context.changed(noun, [])
      return ok({ counts: [...made.value.value], changeId: made.value.changeId })
    },
  }
}

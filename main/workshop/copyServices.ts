import { join } from 'node:path'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { backUp } from '../backup/backUp.ts'
import { backupFolder, type Copy, listCopies } from '../backup/copies.ts'
import { lookInside } from '../backup/lookInside.ts'
import { nouns } from '../contract/entities.ts'
import { faultText } from '../database/fault.ts'
import type { Services } from '../services.ts'
import type { Workshop } from './workshop.ts'

type CopyCalls = 'copy.list' | 'copy.look' | 'copy.make' | 'copy.restore'

/** @returns a copy of the open data file by its name, or that there is none of it */
const findCopy = (workshop: Workshop, name: string): Result<Copy & { readonly path: string }> => {
  const copy = listCopies(workshop.path()).find((each) => each.name === name)
  if (!copy) return failed(problem('noSuchCopy', 'name', { file: name }))
  return ok({ ...copy, path: join(backupFolder(workshop.path()), copy.name) })
}

const makeCopy = async (workshop: Workshop): Promise<Result<null>> => {
  try {
    return await workshop.desk.access.read(async () => {
      const told = backUp(workshop.path(), workshop.desk.now())
      return told.length > 0 ? failed(...told) : ok(null)
    })
  } catch (error) {
    return failed(problem('backupFailed', '', { detail: faultText(error) }))
  }
}

/** The calls about copies of the open data file. */
export const copyServices = (workshop: Workshop): Pick<Services, CopyCalls> => ({
  'copy.list': async () =>
    ok({
      copies: [...listCopies(workshop.path())],
      folder: backupFolder(workshop.path()),
    }),
  'copy.look': async ({ name }) => {
    const copy = findCopy(workshop, name)
    return copy.ok ? lookInside(copy.value.path) : copy
  },
  'copy.make': async () => makeCopy(workshop),
  'copy.restore': async ({ name }, context) => {
    const copy = findCopy(workshop, name)
    if (!copy.ok) return copy
    const contents = lookInside(copy.value.path)
    if (!contents.ok) return contents
    const gone = await workshop.goBack(copy.value.path)
    if (!gone.ok) return gone
    for (const noun of nouns) context.changed(noun, [])
    return ok({ at: copy.value.at })
  },
})

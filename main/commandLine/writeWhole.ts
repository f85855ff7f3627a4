import { renameSync, rmSync, writeFileSync } from 'node:fs'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'

/** Writes a file that is whole or not there: under another name first. */
export const writeWhole = (place: string, bytes: Uint8Array): Result<null> => {
  const unfinished = `${place}.unfinished`
  try {
    writeFileSync(unfinished, bytes)
    renameSync(unfinished, place)
    return ok(null)
  } catch {
    rmSync(unfinished, { force: true })
    return failed(problem('unwritable', '', { file: place }))
  }
}

import { readFileSync, statSync } from 'node:fs'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { MOST_FILE_BYTES } from '../contract/transport.ts'

/** @returns a whole file, or that it is too large or cannot be read */
export const readBytes = (place: string): Result<Uint8Array> => {
  try {
    if (statSync(place).size > MOST_FILE_BYTES)
      return failed(problem('fileTooLarge', '', { mostMb: MOST_FILE_BYTES / 2 ** 20 }))
    return ok(readFileSync(place))
  } catch {
    return failed(problem('unreadable', '', { file: place }))
  }
}

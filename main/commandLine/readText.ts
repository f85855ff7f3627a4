import { createReadStream } from 'node:fs'
import { stat } from 'node:fs/promises'
import { MOST_JOB_BYTES } from '../../geometry/parseJob.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { STANDARD } from './readArgs.ts'

/** A file in another encoding is told, rather than read with signs in it that nobody wrote. */
export const textOf = (bytes: Uint8Array): Result<string> => {
  try {
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
  } catch {
    return failed(problem('jobNotText'))
  }
}

const tooLarge = () => failed(problem('jobTooLarge', '', { mostMb: MOST_JOB_BYTES / 1e6 }))

/** Reads to the limit and no further: a pipe does not tell its size beforehand. */
const readUpTo = async (stream: AsyncIterable<Buffer>, mostBytes: number): Promise<Buffer | null> => {
  const parts: Buffer[] = []
  let length = 0
  for await (const part of stream) {
    length += part.length
    if (length > mostBytes) return null
    parts.push(part)
  }
  return Buffer.concat(parts)
}

/** @param place a path, or `-` for standard input @returns the text; a file too large for a job is refused unread */
export const readText = async (place: string): Promise<Result<string>> => {
  try {
    const isFile = place !== STANDARD
    if (isFile && (await stat(place)).size > MOST_JOB_BYTES) return tooLarge()
    const bytes = await readUpTo(isFile ? createReadStream(place) : process.stdin, MOST_JOB_BYTES)
    return bytes === null ? tooLarge() : textOf(bytes)
  } catch {
    return failed(problem('unreadable', '', { file: place }))
  }
}

import { createReadStream } from 'node:fs'
import { stat } from 'node:fs/promises'
import { MOST_JOB_BYTES } from '../../geometry/parseJob.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'

/** Stands for standard input. */
const STANDARD_INPUT = '-'

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
    const isFile = place !== STANDARD_INPUT
    if (isFile && (await stat(place)).size > MOST_JOB_BYTES) return tooLarge()
    const bytes = await readUpTo(isFile ? createReadStream(place) : process.stdin, MOST_JOB_BYTES)
    return bytes === null ? tooLarge() : ok(new TextDecoder().decode(bytes))
  } catch {
    return failed(problem('unreadable', '', { file: place }))
  }
}

import { readFile, stat } from 'node:fs/promises'
import { basename, resolve } from 'node:path'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { kindOfFile } from '../contract/fileKinds.ts'
import { MOST_FILE_BYTES } from '../contract/transport.ts'
import type { ServiceClient } from '../serviceClient.ts'

/** @returns the files named on a command line, options and what is no kind of file of ours left out */
export const filesNamed = (args: readonly string[], folder: string): readonly string[] =>
  args
    .filter((each) => !each.startsWith('-') && kindOfFile(basename(each)) !== null)
    .map((each) => resolve(folder, each))

const read = async (path: string): Promise<Result<Uint8Array>> => {
  const file = basename(path)
  try {
    const about = await stat(path)
    if (!about.isFile()) return failed(problem('unreadable', '', { file }))
    if (about.size > MOST_FILE_BYTES) return failed(problem('fileTooLarge', '', { mostMb: MOST_FILE_BYTES / 2 ** 20 }))
    return ok(new Uint8Array(await readFile(path)))
  } catch {
    return failed(problem('unreadable', '', { file }))
  }
}

/** Reads a file and lets it wait for the window. @returns why it cannot be opened */
export const offerFile = async (services: ServiceClient, path: string): Promise<Result<unknown>> => {
  const bytes = await read(path)
  if (!bytes.ok) return bytes
  const blobId = await services.put(bytes.value)
  return services.call('file.offer', { blobId, fileName: basename(path) }, `offer ${path}`)
}

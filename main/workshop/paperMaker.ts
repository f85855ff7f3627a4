import { setImmediate } from 'node:timers/promises'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { MadeFile } from '../cards/makeCard.ts'
import type { Desk } from '../database/desk.ts'
import type { CallContext } from '../services.ts'
import type { Blobs } from './blobs.ts'

/** Draws a page elsewhere. @param signal ends the work itself */
export type Draw<Given, Made extends MadeFile = MadeFile> = (given: Given, signal: AbortSignal) => Promise<Result<Made>>

const cancelled = failed(problem('cancelled'))

/** A task that draws something from what the rack holds, and keeps it as a blob for whoever asked. */
export const paperMaker =
  (desk: Desk, blobs: Blobs) =>
  async <Given>(
    mediaType: string,
    { signal, progress }: CallContext,
    read: () => Promise<Result<Given>>,
    draw: (given: Given) => Promise<Result<MadeFile>>,
  ): Promise<Result<{ blobId: string; fileName: string }>> => {
    progress(0)
    const given = await read()
    if (!given.ok) return given
    await setImmediate()
    if (signal.aborted) return cancelled
    const made = await draw(given.value)
    if (signal.aborted) return cancelled
    if (!made.ok) return made
    const blobId = desk.newId()
    blobs.put(blobId, made.value, mediaType)
    progress(1)
    return ok({ blobId, fileName: made.value.fileName })
  }

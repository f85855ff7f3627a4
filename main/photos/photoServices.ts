import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { MOST_PHOTO_BYTES, type NewPhoto, type Photo } from '../contract/extras.ts'
import type { Made } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import { listOf } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { addRecord, editRecord, named, recordServices } from '../rack/recordServices.ts'
import { photoStore } from '../rack/stores.ts'
import type { Services } from '../services.ts'
import type { Blob, Blobs } from '../workshop/blobs.ts'
import { hashOf, photoPath, photoTypeOf } from './photoFiles.ts'

/** A picture that was handed in, with its kind as its own bytes tell it. */
const takenIn = (blobs: Blobs, blobId: string): Result<Pick<Photo, 'mediaType' | 'hash'> & { bytes: Uint8Array }> => {
  const file = blobs.get(blobId)
  if (!file) return failed(problem('fileGone', 'blobId'))
  const mediaType = photoTypeOf(file.bytes)
  if (mediaType === null) return failed(problem('photoNone', 'blobId'))
  if (file.bytes.length > MOST_PHOTO_BYTES)
    return failed(problem('fileTooLarge', 'blobId', { mostMb: MOST_PHOTO_BYTES / 2 ** 20 }))
  return ok({ mediaType, hash: hashOf(file.bytes), bytes: file.bytes })
}

/** Bytes lie once however many records show them; they stay when the last of these goes, since it can be had back. */
const keepBytes = async (db: Database, hash: string, bytes: Uint8Array): Promise<void> => {
  await db
    .insertInto('photoBytes')
    .values({ hash, bytes })
    .onConflict((there) => there.column('hash').doNothing())
    .execute()
}

const addPhoto = async (
  db: Database,
  desk: Desk,
  blobs: Blobs,
  { blobId, ...told }: NewPhoto,
): Promise<Result<Made<Photo>>> => {
  const taken = takenIn(blobs, blobId)
  if (!taken.ok) return taken
  const { bytes, ...file } = taken.value
  await keepBytes(db, file.hash, bytes)
  return addRecord(db, desk, photoStore, { ...told, ...file, at: desk.now().toISOString() })
}

/** The calls about pictures of tools. */
export const photoServices = (
  desk: Desk,
  blobs: Blobs,
): Pick<Services, `photo.${'list' | 'add' | 'edit' | 'remove'}`> => {
  const { remove } = recordServices(desk, photoStore)
  return {
    ...named('photo', { remove }),
    'photo.list': async ({ toolId }) =>
      ok(await desk.access.read((db) => listOf(db, photoStore, { column: 'toolId', id: toolId, by: 'at' }))),
    'photo.add': async (asked, context) => {
      const made = await desk.access.write((db) => addPhoto(db, desk, blobs, asked))
      if (made.ok) context.changed('photo', [made.value.value.id])
      return made
    },
    'photo.edit': async ({ caption, ...seen }, context) => {
      const made = await desk.access.write((db) => editRecord(db, desk, photoStore, seen, { caption }))
      if (made.ok) context.changed('photo', [seen.id])
      return made
    },
  }
}

/** @returns the picture of a record's id, as a file to be shown; null where there is none, or it was taken away */
export const photoFile = async (db: Database, id: string): Promise<Blob | null> => {
  const photo = await db
    .selectFrom('photo')
    .innerJoin('photoBytes', 'photoBytes.hash', 'photo.hash')
    .select(['photo.mediaType', 'photo.hash', 'photoBytes.bytes'])
    .where('photo.id', '=', id)
    .where('photo.deletedAt', 'is', null)
    .executeTakeFirst()
  if (!photo) return null
  const fileName = photoPath(photo.hash, photo.mediaType).replace('photos/', '')
  return { bytes: photo.bytes, mediaType: photo.mediaType, fileName }
}

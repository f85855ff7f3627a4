import { createHash } from 'node:crypto'
import { photoTypes } from '../contract/extras.ts'

type PhotoType = (typeof photoTypes)[number]

/** Endings of the files, by kind of picture. */
const endings: Readonly<Record<PhotoType, string>> = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp' }

/** How files of each kind begin; null: any byte. */
const beginnings: Readonly<Record<PhotoType, readonly (number | null)[]>> = {
  'image/jpeg': [0xff, 0xd8, 0xff],
  'image/png': [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
  'image/webp': [0x52, 0x49, 0x46, 0x46, null, null, null, null, 0x57, 0x45, 0x42, 0x50],
}

const PHOTO_NAME = /^photos\/([0-9a-f]{64})\.(jpg|png|webp)$/

/** @returns where a picture lies in a bundle */
export const photoPath = (hash: string, mediaType: string): string =>
  `photos/${hash}.${endings[mediaType as PhotoType]}`

/** @returns the hash that a name in a bundle speaks of, or null where it is not the name of a picture */
export const hashOfPath = (path: string): string | null => PHOTO_NAME.exec(path)?.[1] ?? null

/** @returns SHA-256 in hexadecimal, as records of pictures have it */
export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

const beginsAs = (bytes: Uint8Array, mediaType: PhotoType): boolean =>
  beginnings[mediaType].every((byte, i) => byte === null || bytes[i] === byte)

/** @returns the kind of picture that a file is by its first bytes; null: none that is taken in */
export const photoTypeOf = (bytes: Uint8Array): PhotoType | null =>
  photoTypes.find((mediaType) => beginsAs(bytes, mediaType)) ?? null

/** Whether a file is what its name in the bundle says: the kind by its first bytes, the whole by its hash. */
export const isPhoto = (path: string, bytes: Uint8Array): boolean => {
  const [, hash, ending] = PHOTO_NAME.exec(path) ?? []
  const [mediaType] = Object.entries(endings).find(([, each]) => each === ending) ?? []
  if (mediaType === undefined) return false
  return beginsAs(bytes, mediaType as PhotoType) && hashOf(bytes) === hash
}

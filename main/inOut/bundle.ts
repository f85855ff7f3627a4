import { unzipSync, type Zippable, zipSync } from 'fflate'
import { failed, ok, type Problem, problem, type Result } from '../../geometry/result.ts'
import { hashOfPath, isPhoto } from '../photos/photoFiles.ts'

/** A bundle: a zip with our document and the pictures that it speaks of, and nothing else. */
const DOCUMENT = 'rack.json'

/** Most bytes of all that is packed in a bundle: a workshop's pictures, and far from what a small zip can be made to swell to. */
const MOST_UNPACKED_BYTES = 1024 * 1024 * 1024
/** Most files of a bundle. */
const MOST_FILES = 20_000
/** Text packs to a fiftieth at most where it repeats itself; far beyond lies only what was made to swell. */
const MOST_SWELLING = 200
/** Small files may swell as they like. */
const SMALL_BYTES = 1024 * 1024

/** The earliest day a zip can tell: bundles of the same rack are then equal. */
const NO_DAY = new Date(1980, 0, 1)

/** Whether bytes begin as a zip does. */
export const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b

/** @param photos by path. @returns the zip; pictures are packed already and are stored as they are */
export const writeBundle = (document: string, photos: ReadonlyMap<string, Uint8Array>): Uint8Array => {
  const files: Zippable = { [DOCUMENT]: [new TextEncoder().encode(document), { level: 6, mtime: NO_DAY }] }
  for (const [path, bytes] of photos) files[path] = [bytes, { level: 0, mtime: NO_DAY }]
  return zipSync(files)
}

/** What a zip says of one of its files, before anything is unpacked. */
interface Told {
  readonly name: string
  readonly size: number
  readonly originalSize: number
}

/** Looks at every file before it is unpacked. Names are compared whole, so none leads anywhere; nothing is written to a disk. */
const createGate = () => {
  const names = new Set<string>()
  let bytes = 0
  let refusal: Problem | null = null
  const reasonOf = ({ name, size, originalSize }: Told): Problem | null => {
    if (name !== DOCUMENT && hashOfPath(name) === null)
      return problem('bundleStranger', '', { file: name.slice(0, 80) })
    if (names.has(name)) return problem('bundleTwice', '', { file: name })
    if (names.size >= MOST_FILES || bytes > MOST_UNPACKED_BYTES) return problem('bundleSwells')
    return originalSize > SMALL_BYTES && originalSize > size * MOST_SWELLING ? problem('bundleSwells') : null
  }
  return {
    refusal: () => refusal,
    lets: (told: Told): boolean => {
      bytes += told.originalSize
      refusal ??= reasonOf(told)
      names.add(told.name)
      return refusal === null
    },
  }
}

/** A bundle, opened. */
export interface Bundle {
  readonly document: Uint8Array
  /** By hash. */
  readonly photos: ReadonlyMap<string, Uint8Array>
}

const contentsOf = (files: Readonly<Record<string, Uint8Array>>): Result<Bundle> => {
  const { [DOCUMENT]: document, ...others } = files
  if (document === undefined) return failed(problem('bundleEmpty'))
  const wrong = Object.entries(others).find(([path, bytes]) => !isPhoto(path, bytes))
  if (wrong) return failed(problem('photoWrong', '', { file: wrong[0] }))
  const photos = Object.entries(others).map(([path, bytes]): [string, Uint8Array] => [hashOfPath(path) ?? '', bytes])
  return ok({ document, photos: new Map(photos) })
}

/** @returns what is in a bundle; or why it is none: `bundleDamaged`, `bundleStranger`, `bundleSwells`, `bundleTwice`, `bundleEmpty`, `photoWrong` */
export const readBundle = (bytes: Uint8Array): Result<Bundle> => {
  const gate = createGate()
  try {
    const files = unzipSync(bytes, { filter: gate.lets })
    const refusal = gate.refusal()
    return refusal ? failed(refusal) : contentsOf(files)
  } catch {
    return failed(gate.refusal() ?? problem('bundleDamaged'))
  }
}

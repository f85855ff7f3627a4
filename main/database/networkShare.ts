import { statfsSync } from 'node:fs'

/** File systems of other machines, by the number that Linux gives them (`man 2 statfs`): SQLite's locks cannot be relied upon there. */
const sharedTypes: ReadonlyMap<number, string> = new Map([
  [0x6969, 'NFS'],
  [0x517b, 'SMB'],
  [0xff534d42, 'CIFS'],
  [0xfe534d42, 'SMB'],
  [0x01021997, '9P'],
  [0x5346414f, 'AFS'],
  [0x00c36400, 'Ceph'],
  [0x47504653, 'GPFS'],
  [0x0bd00bd0, 'Lustre'],
])

/** What tells of a folder where it lies. */
interface FolderFacts {
  readonly platform: NodeJS.Platform
  readonly path: string
  /** Number of its file system; null: not known. */
  readonly type: number | null
}

/** Windows writes the address of a share this way, whether it was mapped to a letter or not is not seen. */
const ADDRESS_OF_SHARE = /^(?:\\\\|\/\/)(?!\?\\[A-Za-z]:|\.\\)/

/** @returns what kind of network share a folder lies on, or null where it lies on this machine as far as can be told */
export const shareOf = ({ platform, path, type }: FolderFacts): string | null => {
  if (platform === 'win32') return ADDRESS_OF_SHARE.test(path) ? 'SMB' : null
  // On other systems these numbers mean other things.
  if (platform !== 'linux' || type === null) return null
  return sharedTypes.get(type >>> 0) ?? null
}

const typeOf = (path: string): number | null => {
  try {
    return Number(statfsSync(path).type)
  } catch {
    return null
  }
}

/** As `shareOf`, of a folder as it lies here. */
export const networkShare = (path: string): string | null =>
  shareOf({ platform: process.platform, path, type: process.platform === 'linux' ? typeOf(path) : null })

import { execFileSync } from 'node:child_process'
import { readFileSync, realpathSync } from 'node:fs'
import { type Mount, mountOf, mountsListed } from './mounts.ts'

/** File systems of other machines, where SQLite's locks cannot be relied upon, by the names that Linux and macOS give them. */
const sharedTypes: ReadonlyMap<string, string> = new Map([
  ...(['nfs', 'nfs4'] as const).map((type) => [type, 'NFS'] as const),
  ...(['cifs', 'smb3', 'smbfs', 'fuse.smbnetfs'] as const).map((type) => [type, 'SMB'] as const),
  ...(['webdav', 'davfs', 'fuse.davfs', 'fuse.davfs2'] as const).map((type) => [type, 'WebDAV'] as const),
  ['afpfs', 'AFP'],
  ['ftp', 'FTP'],
  ['9p', '9P'],
  ['afs', 'AFS'],
  ['ceph', 'Ceph'],
  ['gpfs', 'GPFS'],
  ['lustre', 'Lustre'],
  ['fuse.sshfs', 'SSH'],
  ['vboxsf', 'vboxsf'],
  ...(
    ['rclone', 's3fs', 'gcsfuse', 'goofys', 'gvfsd-fuse', 'curlftpfs', 'glusterfs', 'ceph', 'vmhgfs-fuse'] as const
  ).map((program) => [`fuse.${program}`, program] as const),
])

/** Programs may make any folder a file system, of this machine or of another. */
const OF_A_PROGRAM = /^(?:fuse(?:\.|$)|macfuse$|osxfuse$)/

/** An address, or a host with a folder; never a path of this machine, not even two of them with a colon between. */
const ELSEWHERE = /:\/\/|^\/\/[^/]|^[^/]+:/

const shareOfMount = ({ type, source }: Mount): string | null => {
  const known = sharedTypes.get(type)
  if (known !== undefined) return known
  return OF_A_PROGRAM.test(type) && ELSEWHERE.test(source) ? type.replace(/^fuse\./, '') : null
}

/** Windows writes the address of a share this way. */
const ADDRESS_OF_SHARE = /^(?:\\\\|\/\/)(?!\?\\[A-Za-z]:|\.\\)/

/** What tells of a folder where it lies. */
interface FolderFacts {
  readonly platform: NodeJS.Platform
  /** Its path, links followed. */
  readonly path: string
  /** What the system lists as mounted: `/proc/self/mounts`, `mount`, `net use`. */
  readonly listed: string
}

/** @returns what kind of network share a folder lies on, or null where it lies on this machine as far as can be told */
export const shareOf = ({ platform, path, listed }: FolderFacts): string | null => {
  if (platform === 'win32' && ADDRESS_OF_SHARE.test(path)) return 'SMB'
  const mount = mountOf(platform === 'win32' ? path.slice(0, 2).toUpperCase() : path, mountsListed(platform, listed))
  if (!mount) return null
  return platform === 'win32' ? 'SMB' : shareOfMount(mount)
}

/** Long enough for a slow machine; a list that takes longer is not worth a start that waits. */
const LIST_TIMEOUT_MS = 2000

const said = (program: string, ...given: readonly string[]): string =>
  execFileSync(program, given, { encoding: 'utf8', timeout: LIST_TIMEOUT_MS, stdio: ['ignore', 'pipe', 'ignore'] })

/** How each system lists what is mounted. The drive that Windows itself is on is no share, and spares a program at the start. */
const listing: Readonly<Partial<Record<NodeJS.Platform, (path: string) => string>>> = {
  linux: () => readFileSync('/proc/self/mounts', 'utf8'),
  darwin: () => said('/sbin/mount'),
  win32: (path) => (path.slice(0, 2).toUpperCase() === process.env.SystemDrive ? '' : said('net', 'use')),
}

const orElse = (work: () => string, otherwise: string): string => {
  try {
    return work()
  } catch {
    return otherwise
  }
}

/**
 * As `shareOf`, of a folder as it lies here.
 *
 * Run on Linux alone, on local disks, where nothing is warned of. What macOS and Windows say was taken from their manuals
 * and never met on such a machine, nor was any share: the tests hold lists as these systems write them.
 */
export const networkShare = (folder: string): string | null => {
  const { platform } = process
  // On Windows this also leads from a mapped letter to the address of its share.
  const path = orElse(() => realpathSync.native(folder), folder)
  return shareOf({ platform, path, listed: orElse(() => listing[platform]?.(path) ?? '', '') })
}

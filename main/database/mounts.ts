/** One file system where it stands in the tree of folders. */
export interface Mount {
  /** What is mounted, in the system's words: a device, `//server/share`, `user@host:/folder`. */
  readonly source: string
  readonly point: string
  /** Name of the file system, such as `ext4` or `fuse.sshfs`. */
  readonly type: string
}

/** Blanks and backslashes in `/proc/mounts`, written in octal. */
const unescaped = (words: string): string =>
  words.replace(/\\([0-7]{3})/g, (_, octal: string) => String.fromCharCode(Number.parseInt(octal, 8)))

/** Lines of `/proc/self/mounts`: source, point, type and more, parted by blanks. */
const ofLinux = (line: string): Mount | null => {
  const [source, point, type] = line.split(' ').map(unescaped)
  return source && point && type ? { source, point, type } : null
}

/** Lines of `mount` on macOS: `source on point (type, flag, flag)`. */
const ofMac = (line: string): Mount | null => {
  const [, source, point, type] = /^(.+?) on (\/.*) \(([^,)]+)[^()]*\)$/.exec(line) ?? []
  return source && point && type ? { source, point, type } : null
}

/** Lines of `net use` on Windows: whatever the language, a letter and the address it stands for. */
const ofWindows = (line: string): Mount | null => {
  const [, point, source] = /(?:^|\s)([A-Z]:)\s+(\\\\\S+)/i.exec(line) ?? []
  return source && point ? { source, point, type: 'mapped' } : null
}

const readers: Readonly<Partial<Record<NodeJS.Platform, (line: string) => Mount | null>>> = {
  linux: ofLinux,
  darwin: ofMac,
  win32: ofWindows,
}

/** @param listed what the system lists as mounted. @returns it line by line; what cannot be read is left out */
export const mountsListed = (platform: NodeJS.Platform, listed: string): readonly Mount[] =>
  listed.split(/\r?\n/).flatMap((line) => readers[platform]?.(line) ?? [])

/** Whether a folder is the point of a mount or lies under it. */
const isUnder = (path: string, { point }: Mount): boolean =>
  point === '/' || path === point || path.startsWith(point.endsWith(':') ? point : `${point}/`)

/** @returns the mount that a folder lies on: the one furthest down, and of those at one point the last, which hides the others */
export const mountOf = (path: string, mounts: readonly Mount[]): Mount | null =>
  mounts
    // A place where something will be mounted once it is looked into.
    .filter((mount) => mount.type !== 'autofs' && isUnder(path, mount))
    .reduce<Mount | null>((best, mount) => (best && best.point.length > mount.point.length ? best : mount), null)

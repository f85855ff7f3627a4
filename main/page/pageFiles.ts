import { readFile, realpath } from 'node:fs/promises'
import { extname, join, relative, sep } from 'node:path'

/** What the build writes; a file of any other kind is not handed out. */
const mediaTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
}

/** A file of the built page. */
export interface PageFile {
  readonly bytes: Uint8Array<ArrayBuffer>
  readonly mediaType: string
}

/** The plain names of a path, or null where it is not one: no way up, no drive, no hidden file, nothing encoded twice. */
const plainNames = (pathname: string): readonly string[] | null => {
  if (!/^\/[A-Za-z0-9._/-]*$/.test(pathname)) return null
  const names = (pathname === '/' ? '/index.html' : pathname).slice(1).split('/')
  return names.some((name) => name === '' || name.startsWith('.')) ? null : names
}

const isWithin = (folder: string, path: string): boolean => {
  const way = relative(folder, path)
  return way !== '' && way !== '..' && !way.startsWith(`..${sep}`)
}

/**
 * @param folder where the built page lies
 * @param pathname path of the address, still encoded; the build's names never need encoding
 * @returns the file, or null where there is none to hand out, links that lead out of the folder among them
 */
export const pageFile = async (folder: string, pathname: string): Promise<PageFile | null> => {
  const names = plainNames(pathname)
  const mediaType = mediaTypes[extname(names?.at(-1) ?? '')]
  if (names === null || mediaType === undefined) return null
  try {
    const path = await realpath(join(folder, ...names))
    if (!isWithin(await realpath(folder), path)) return null
    return { bytes: new Uint8Array(await readFile(path)), mediaType }
  } catch {
    return null
  }
}

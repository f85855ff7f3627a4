import { readFileSync } from 'node:fs'

/** A file of a package. */
export interface Packed {
  readonly path: string
  readonly bytes: number
  /** Beside the archive, as a file of its own. */
  readonly unpacked: boolean
}

interface Node {
  readonly files?: Readonly<Record<string, Node>>
  readonly size?: number
  readonly unpacked?: boolean
}

const below = (node: Node, path: string): readonly Packed[] =>
  node.files
    ? Object.entries(node.files).flatMap(([name, child]) => below(child, path === '' ? name : `${path}/${name}`))
    : [{ path, bytes: node.size ?? 0, unpacked: node.unpacked ?? false }]

/** An archive begins with four lengths (32 bit, little-endian), of which the last is that of its list of files, as JSON. */
const LENGTHS = 16
const LAST = 12

/** @returns every file of an asar archive */
export const inventoryOf = (file: string): readonly Packed[] => {
  const bytes = readFileSync(file)
  const list = bytes.subarray(LENGTHS, LENGTHS + bytes.readUInt32LE(LAST)).toString('utf8')
  return below(JSON.parse(list) as Node, '')
}

/** @returns bytes by the first folders of a path, largest first */
export const byFolder = (
  files: readonly Packed[],
  depth: number,
): readonly (readonly [folder: string, bytes: number])[] => {
  const sums = new Map<string, number>()
  for (const { path, bytes } of files) {
    const folder = path.split('/').slice(0, depth).join('/')
    sums.set(folder, (sums.get(folder) ?? 0) + bytes)
  }
  return [...sums].sort(([, a], [, b]) => b - a)
}

import { readFileSync } from 'node:fs'
import type { fuses } from './builder.ts'
import { SENTINEL } from './dummyElectron.ts'

/** In the order in which they lie in the binary. */
const inOrder: readonly (keyof typeof fuses)[] = [
  'runAsNode',
  'enableCookieEncryption',
  'enableNodeOptionsEnvironmentVariable',
  'enableNodeCliInspectArguments',
  'enableEmbeddedAsarIntegrityValidation',
  'onlyLoadAppFromAsar',
  'loadBrowserProcessSpecificV8Snapshot',
  'grantFileProtocolExtraPrivileges',
]

/** Version and length of the wire stand between the mark and the fuses. */
const HEAD = 2

/** @returns the fuses as they are burnt into a binary; null where it has none */
export const readFuses = (binary: string): Readonly<Record<string, boolean>> | null => {
  const bytes = readFileSync(binary)
  const at = bytes.indexOf(SENTINEL)
  if (at < 0) return null
  const from = at + SENTINEL.length + HEAD
  return Object.fromEntries(inOrder.map((name, k) => [name, bytes[from + k] === '1'.charCodeAt(0)]))
}

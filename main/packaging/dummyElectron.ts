import { chmodSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** What marks the fuses in Electron's binary, and the fuses as it comes: version 1 of the wire, then one sign a fuse. */
export const SENTINEL = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'
const WIRE_VERSION = 1
const FUSES_AS_THEY_COME = '101010111'

/**
 * A folder in which a shell stands that is none, for machines where Electron's cannot be had: packing then shows what is
 * packed and how the fuses are set, and makes nothing that runs.
 */
export const makeDummyElectron = (folder: string): void => {
  mkdirSync(folder, { recursive: true })
  const wire = Buffer.from([WIRE_VERSION, FUSES_AS_THEY_COME.length])
  const binary = Buffer.concat([Buffer.from(SENTINEL), wire, Buffer.from(FUSES_AS_THEY_COME)])
  writeFileSync(join(folder, 'electron'), binary)
  chmodSync(join(folder, 'electron'), 0o755)
}

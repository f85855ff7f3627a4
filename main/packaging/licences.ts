import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** A library that is part of what users get. */
export interface Licence {
  readonly name: string
  readonly version: string
  /** SPDX expression. */
  readonly licence: string
  /** As the library brings it. */
  readonly text: string
  /** Its hash in the lock, so that what was packed can be told. */
  readonly integrity: string
}

interface Locked {
  readonly version?: string
  readonly license?: string
  readonly integrity?: string
  readonly dev?: boolean
  readonly optional?: boolean
  readonly dependencies?: Readonly<Record<string, string>>
}

type Lock = Readonly<Record<string, Locked>>

/** Libraries of the page, built into it; all others that are packed stand under `dependencies`. */
const inPage = [
  ...['react', 'react-dom', 'three', '@react-three/fiber', 'zustand', 'mediabunny'],
  ...['@fontsource/sofia-sans', '@fontsource/sofia-sans-semi-condensed'],
] as const

const readLock = (root: string): Lock => JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages

/** The place in the lock that a package finds another one at: beside itself first, then further up. */
const placeOf = (lock: Lock, from: string, name: string): string | null => {
  for (let folder = from; ; folder = folder.slice(0, Math.max(0, folder.lastIndexOf('node_modules/') - 1))) {
    const place = folder === '' ? `node_modules/${name}` : `${folder}/node_modules/${name}`
    if (lock[place]) return place
    if (folder === '') return null
  }
}

/** Everything that some packages need to run, themselves included. */
const withAllBelow = (lock: Lock, names: readonly string[]): readonly string[] => {
  const found = new Set<string>()
  const add = (from: string, name: string): void => {
    const place = placeOf(lock, from, name)
    if (place === null || found.has(place)) return
    found.add(place)
    for (const below of Object.keys(lock[place]?.dependencies ?? {}))
      if (!below.startsWith('@types/')) add(place, below)
  }
  for (const name of names) add('', name)
  return [...found]
}

const LICENCE_FILE = /^(licen[cs]e|copying|ofl)/i

const textIn = (folder: string): string => {
  if (!existsSync(folder)) return ''
  const file = readdirSync(folder)
    .filter((name) => LICENCE_FILE.test(name))
    .sort()[0]
  return file ? readFileSync(join(folder, file), 'utf8').trim() : ''
}

/** @returns every library that is packed, by name. @param root the project's folder, its packages installed */
export const licencesOf = (root: string): readonly Licence[] => {
  const lock = readLock(root)
  const own = Object.keys(lock['']?.dependencies ?? {})
  return withAllBelow(lock, [...own, ...inPage])
    .map((place): Licence => {
      const { version = '', license = '', integrity = '' } = lock[place] ?? {}
      const name = place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length)
      return { name, version, licence: license, text: textIn(join(root, place)), integrity }
    })
    .sort((a, b) => (a.name + a.version < b.name + b.version ? -1 : 1))
}

/** Licences under which something may be part of the program: all let it be given on, with its notice. */
export const allowedLicences = [
  'MIT',
  '0BSD',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  'Zlib',
  'MPL-2.0',
  'OFL-1.1',
]

/** Whether an SPDX expression is made of allowed licences alone: each of AND, one of OR. */
export const isAllowed = (expression: string): boolean =>
  expression
    .replace(/[()]/g, '')
    .split(/ AND /)
    .every((part) => part.split(/ OR /).some((each) => allowedLicences.includes(each.trim())))

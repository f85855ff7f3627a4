import type { Entry } from './entry.ts'

/** Accents and capitals are the same letter. */
const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()

const wordsOf = (text: string): readonly string[] => plain(text).match(/[\p{L}\p{N}]+/gu) ?? []

/** An entry with its words ready: searching goes over all of them at each letter. */
export interface Indexed {
  readonly entry: Entry
  readonly title: readonly string[]
  readonly all: readonly string[]
}

export const indexed = (entries: readonly Entry[]): readonly Indexed[] =>
  entries.map((entry) => {
    const title = wordsOf(entry.title)
    const rest = [entry.id, entry.group ?? '', ...entry.lines, ...(entry.steps ?? []), ...(entry.facts ?? [])]
    return { entry, title, all: [...title, ...wordsOf(rest.join(' '))] }
  })

const begins = (words: readonly string[], typed: readonly string[]): boolean =>
  typed.every((start) => words.some((word) => word.startsWith(start)))

/** @returns entries in which every word typed begins a word; those where the title has them all come first */
export const findEntries = (entries: readonly Indexed[], typed: string): readonly Entry[] => {
  const starts = wordsOf(typed)
  if (starts.length === 0) return []
  const found = entries.filter(({ all }) => begins(all, starts))
  const [first, then] = [
    found.filter(({ title }) => begins(title, starts)),
    found.filter(({ title }) => !begins(title, starts)),
  ]
  return [...first, ...then].map(({ entry }) => entry)
}

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { z } from 'zod'

/** As many as are told apart at a glance. */
const MOST_RECENT = 10

const recentSchema = z.array(z.string().min(1).max(4096)).max(MOST_RECENT)

/** @returns the paths opened last, newest first; none where nothing readable was kept */
export const readRecent = (place: string): readonly string[] => {
  try {
    return recentSchema.parse(JSON.parse(readFileSync(place, 'utf8')))
  } catch {
    return []
  }
}

/** @returns the list with a path before the others, each once */
export const withRecent = (recent: readonly string[], path: string): readonly string[] =>
  [path, ...recent.filter((each) => each !== path)].slice(0, MOST_RECENT)

/** Keeps the list; where that fails the menu forgets, which harms nobody. */
export const keepRecent = (place: string, recent: readonly string[]): void => {
  try {
    mkdirSync(dirname(place), { recursive: true })
    writeFileSync(place, JSON.stringify(recent))
  } catch {
    return
  }
}

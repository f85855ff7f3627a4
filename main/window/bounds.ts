import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import type { Rectangle } from 'electron'
import { z } from 'zod'

const boundsSchema = z.object({ x: z.int(), y: z.int(), width: z.int().positive(), height: z.int().positive() })

/** The screens are drawn for this, and stay usable down to the least. */
const FIRST_SIZE = { width: 1440, height: 900 }
export const LEAST_SIZE = { width: 960, height: 640 }

/** So much of a window has to lie on a screen, or it could not be taken hold of. */
const LEAST_SEEN = 120

const overlap = (from: number, length: number, otherFrom: number, otherLength: number): number =>
  Math.min(from + length, otherFrom + otherLength) - Math.max(from, otherFrom)

const isSeenOn = (screen: Rectangle, bounds: Rectangle): boolean =>
  overlap(bounds.x, bounds.width, screen.x, screen.width) >= LEAST_SEEN &&
  overlap(bounds.y, bounds.height, screen.y, screen.height) >= LEAST_SEEN &&
  bounds.y >= screen.y

/**
 * Where the window goes: where it was, unless no screen of now shows it there.
 *
 * @param screens the work areas, in the coordinates of the bounds
 */
export const placeOf = (kept: Rectangle | null, screens: readonly Rectangle[]): Partial<Rectangle> => {
  if (kept === null) return FIRST_SIZE
  const size = { width: kept.width, height: kept.height }
  return screens.some((screen) => isSeenOn(screen, kept)) ? kept : size
}

/** @returns the bounds last kept, or null where there are none that can be read */
export const readBounds = (path: string): Rectangle | null => {
  try {
    return boundsSchema.parse(JSON.parse(readFileSync(path, 'utf8')))
  } catch {
    return null
  }
}

/** Keeps the bounds; where that fails the window opens in its first place next time, which harms nobody. */
export const keepBounds = (path: string, bounds: Rectangle): void => {
  try {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, JSON.stringify(bounds))
  } catch {
    return
  }
}

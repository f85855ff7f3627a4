import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import type { Rectangle } from 'electron'
import { z } from 'zod'

/** Chromium's own steps of zoom: each a fifth larger or smaller; from half to two and a half times. */
export const ZOOM = { least: -4, most: 5 } as const

const boundsSchema = z.object({ x: z.int(), y: z.int(), width: z.int().positive(), height: z.int().positive() })

const stateSchema = boundsSchema.extend({
  maximized: z.boolean().default(false),
  fullScreen: z.boolean().default(false),
  zoomLevel: z.number().min(ZOOM.least).max(ZOOM.most).default(0),
})

/** How the window stood: where it is when it fills no screen, whether it filled one, how large its page was shown. */
export type WindowState = z.output<typeof stateSchema>

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

/** How far all screens together reach. */
const reachOf = (screens: readonly Rectangle[]): { readonly width: number; readonly height: number } => ({
  width: Math.max(...screens.map(({ x, width }) => x + width)) - Math.min(...screens.map(({ x }) => x)),
  height: Math.max(...screens.map(({ y, height }) => y + height)) - Math.min(...screens.map(({ y }) => y)),
})

/**
 * Where the window goes: where it was, unless no screen of now shows it there; never larger than the screens of now.
 *
 * @param screens the work areas, in the coordinates of the bounds
 */
export const placeOf = (kept: Rectangle | null, screens: readonly Rectangle[]): Partial<Rectangle> => {
  const reach = reachOf(screens)
  const wanted = kept ?? FIRST_SIZE
  const size = { width: Math.min(wanted.width, reach.width), height: Math.min(wanted.height, reach.height) }
  if (kept === null) return size
  const { x, y } = kept
  return screens.some((screen) => isSeenOn(screen, { x, y, ...size })) ? { x, y, ...size } : size
}

/**
 * Where a window that is open goes when the screens are others than before.
 *
 * @returns null: it may stay where it is; otherwise a place in the middle of the first screen
 */
export const broughtBack = (bounds: Rectangle, screens: readonly Rectangle[]): Rectangle | null => {
  const [first] = screens
  if (first === undefined || screens.some((screen) => isSeenOn(screen, bounds))) return null
  const width = Math.min(bounds.width, first.width)
  const height = Math.min(bounds.height, first.height)
  const x = first.x + Math.round((first.width - width) / 2)
  const y = first.y + Math.round((first.height - height) / 2)
  return { x, y, width, height }
}

/** @returns the state last kept, or null where there is none that can be read */
export const readState = (path: string): WindowState | null => {
  try {
    return stateSchema.parse(JSON.parse(readFileSync(path, 'utf8')))
  } catch {
    return null
  }
}

/** Keeps the state; where that fails the window opens in its first place next time, which harms nobody. */
export const keepState = (path: string, state: WindowState): void => {
  try {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, JSON.stringify(state))
  } catch {
    return
  }
}

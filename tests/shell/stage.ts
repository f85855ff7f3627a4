import type { BrowserContext, Page } from '@playwright/test'
import type { MenuItemConstructorOptions, Rectangle } from 'electron'

/** What the double of Electron plays on: set by the test before the program's main file is loaded. */
export interface Stage {
  readonly context: BrowserContext
  /** Given to the program as `--data`. */
  readonly dataDir: string
  /** Nothing that the page hands over can be written. */
  isDiskFull: boolean
  /** What the program asked in a box of the system, newest last. */
  readonly asked: string[]
  /** The work areas of the screens. */
  screens: readonly Rectangle[]
  /** The native menu as it stands. */
  menu: readonly MenuItemConstructorOptions[]
  /** Paths that are chosen in the next box that lets files be chosen. */
  chosen: readonly string[]
  /** The key that is pressed in the next box. */
  press: number
  /** The window's page, once the program has opened it. */
  readonly opened: PromiseWithResolvers<Page>
  /** Resolves when the program has quit. */
  readonly ended: PromiseWithResolvers<void>
}

const place = globalThis as { camberwrightStage?: Stage }

export const setStage = (context: BrowserContext, dataDir: string): Stage => {
  place.camberwrightStage = {
    context,
    dataDir,
    isDiskFull: false,
    asked: [],
    screens: [{ x: 0, y: 0, width: 1920, height: 1080 }],
    menu: [],
    chosen: [],
    press: 0,
    opened: Promise.withResolvers(),
    ended: Promise.withResolvers(),
  }
  return place.camberwrightStage
}

/** The stage set last. Kept globally: the double is loaded by the program, not by the test. */
export const stage = (): Stage => {
  if (place.camberwrightStage === undefined) throw new Error('the double of Electron was loaded without a stage')
  return place.camberwrightStage
}

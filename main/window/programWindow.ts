import type { BrowserWindow } from 'electron'

let held: BrowserWindow | null = null

/** Remembers the program's own window for as long as it is open: the class view beside it is a window, too. */
export const holdProgramWindow = (window: BrowserWindow): void => {
  held = window
  window.once('closed', () => {
    if (held === window) held = null
  })
}

/** @returns the program's own window; null: none is open */
export const programWindow = (): BrowserWindow | null => held

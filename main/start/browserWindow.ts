import { type ChildProcess, spawn } from 'node:child_process'
import { accessSync, constants, existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import type { Machine } from './dataFolder.ts'

/** Browsers of the Chromium family, which can open a page as a window of its own. */
const commands = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'brave-browser',
]

const macNames = ['Google Chrome', 'Chromium', 'Microsoft Edge', 'Brave Browser']
const windowsPaths = ['Google\\Chrome\\Application\\chrome.exe', 'Microsoft\\Edge\\Application\\msedge.exe']

const places = ({ platform, env }: Machine): readonly string[] => {
  if (platform === 'darwin') return macNames.map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`)
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter((path) => path !== undefined)
    return windowsPaths.flatMap((path) => roots.map((root) => join(root, path)))
  }
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => folder !== '')
  return commands.flatMap((command) => folders.map((folder) => join(folder, command)))
}

const canRun = (path: string): boolean => {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}

/** @returns the path of an installed browser that can open a window of its own, or null */
export const findBrowser = (machine: Machine): string | null => places(machine).find(canRun) ?? null

/** Whether windows can be shown: on Linux only where a display is named. */
export const hasDisplay = ({ platform, env }: Machine): boolean =>
  platform === 'win32' || platform === 'darwin' || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY)

/** What the screens are drawn for; later the browser itself remembers where its window was. */
const FIRST_SIZE = '--window-size=1440,900'

/**
 * @param profile folder of the browser's own: the user's tabs and settings stay untouched, and the process ends with the window
 * @param stop closes the window
 */
export const openBrowserWindow = (
  browser: string,
  address: string,
  profile: string,
  stop: AbortSignal,
): ChildProcess => {
  // The browser's sandbox refuses to run for root; the other switch hides the bar that says so.
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox', '--test-type'] : []
  const size = existsSync(profile) ? [] : [FIRST_SIZE]
  const own = [`--app=${address}`, `--user-data-dir=${profile}`, '--no-first-run', '--no-default-browser-check']
  return spawn(browser, [...own, ...size, ...asRoot], { stdio: 'ignore', signal: stop })
}

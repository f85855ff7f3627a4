import { BrowserWindow, type Rectangle } from 'electron'
import type { HostEvent } from '../contract/events.ts'
import type { ServiceClient } from '../serviceClient.ts'
import { LEAST_SIZE } from './bounds.ts'
import { PAGE_ORIGIN } from './pageOrigin.ts'
import { holdProgramWindow } from './programWindow.ts'
import { preloadIn, webPreferences } from './webPreferences.ts'
import { forwardEvents } from './windowCalls.ts'
import { followSecond, keepWindowState, stateAtOpening } from './windowState.ts'

/** @param built folder of the built program: `preload` and `renderer` lie in it */
const createWindow = (built: string, bounds: Partial<Rectangle>): BrowserWindow =>
  new BrowserWindow({
    ...bounds,
    minWidth: LEAST_SIZE.width,
    minHeight: LEAST_SIZE.height,
    show: false,
    webPreferences: webPreferences(preloadIn(built)),
  })

/** Opens the program's one window, shown when its page is drawn. @param watch sees to a page that fails */
export const openWindow = async (
  built: string,
  services: ServiceClient,
  watch: (window: BrowserWindow) => void,
): Promise<BrowserWindow> => {
  const { bounds, state } = stateAtOpening()
  const window = createWindow(built, bounds)
  holdProgramWindow(window)
  forwardEvents(services, window)
  watch(window)
  window.once('ready-to-show', () => window.show())
  keepWindowState(window, state)
  followSecond(window, () => window.webContents.send('event', { type: 'classViewBack' } satisfies HostEvent))
  await window.loadURL(`${PAGE_ORIGIN}/`)
  return window
}

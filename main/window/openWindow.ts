import { join } from 'node:path'
import { app, BrowserWindow, screen } from 'electron'
import type { ServiceClient } from '../serviceClient.ts'
import { keepBounds, LEAST_SIZE, placeOf, readBounds } from './bounds.ts'
import { PAGE_ORIGIN } from './pageOrigin.ts'
import { preloadIn, webPreferences } from './webPreferences.ts'
import { forwardEvents } from './windowCalls.ts'

/** Where the window was, beside the data. */
const boundsPath = (): string => join(app.getPath('userData'), 'window.json')

/** @param built folder of the built program: `preload` and `renderer` lie in it */
const createWindow = (built: string): BrowserWindow =>
  new BrowserWindow({
    ...placeOf(
      readBounds(boundsPath()),
      screen.getAllDisplays().map(({ workArea }) => workArea),
    ),
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
  const window = createWindow(built)
  forwardEvents(services, window)
  watch(window)
  window.once('ready-to-show', () => window.show())
  window.on('close', () => keepBounds(boundsPath(), window.getNormalBounds()))
  await window.loadURL(`${PAGE_ORIGIN}/`)
  return window
}

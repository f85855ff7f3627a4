import { join } from 'node:path'
import { app, type BrowserWindow, type Rectangle, screen } from 'electron'
import { broughtBack, keepState, placeOf, readState, type WindowState, ZOOM } from './bounds.ts'

/** Where the window was, beside the data. */
const place = (): string => join(app.getPath('userData'), 'window.json')

const screens = (): readonly Rectangle[] => screen.getAllDisplays().map(({ workArea }) => workArea)

/** The window as it is to be opened. */
export const stateAtOpening = (): { readonly bounds: Partial<Rectangle>; readonly state: WindowState | null } => {
  const state = readState(place())
  return { bounds: placeOf(state, screens()), state }
}

const stateOf = (window: BrowserWindow): WindowState => ({
  ...window.getNormalBounds(),
  maximized: window.isMaximized(),
  fullScreen: window.isFullScreen(),
  zoomLevel: limited(window.webContents.getZoomLevel()),
})

const limited = (zoomLevel: number): number => Math.min(ZOOM.most, Math.max(ZOOM.least, zoomLevel))

/** Ctrl and the wheel step as the menu's words do. */
const zoomByWheel = (window: BrowserWindow): void => {
  const { webContents } = window
  webContents.on('zoom-changed', (_event, direction) =>
    webContents.setZoomLevel(limited(webContents.getZoomLevel() + (direction === 'in' ? 0.5 : -0.5))),
  )
}

/** A screen that goes takes no window with it. @param onBack told when the window had to be brought back */
const followScreens = (window: BrowserWindow, onBack: () => void = () => undefined): void => {
  const look = (): void => {
    const back = broughtBack(window.getNormalBounds(), screens())
    if (back === null || window.isMinimized()) return
    // On a screen of its own it may have filled that; here it would cover what it came from.
    if (window.isFullScreen()) window.setFullScreen(false)
    window.setBounds(back)
    onBack()
  }
  screen.on('display-removed', look)
  screen.on('display-metrics-changed', look)
  window.once('closed', () => {
    screen.off('display-removed', look)
    screen.off('display-metrics-changed', look)
  })
}

/** Puts the window as it was, keeps how it is when it closes, and keeps it in sight meanwhile. */
export const keepWindowState = (window: BrowserWindow, state: WindowState | null): void => {
  const { webContents } = window
  webContents.once('did-finish-load', () => webContents.setZoomLevel(state?.zoomLevel ?? 0))
  // What is not shown yet would be shown by this, before its page is drawn.
  window.once('ready-to-show', () => {
    if (state?.maximized) window.maximize()
    if (state?.fullScreen) window.setFullScreen(true)
  })
  zoomByWheel(window)
  followScreens(window)
  window.on('close', () => keepState(place(), stateOf(window)))
}

/** Keeps in sight what a window's page opens: the class view, on a projector that may be unplugged. @param onBack as above */
export const followSecond = ({ webContents }: BrowserWindow, onBack: () => void): void =>
  void webContents.on('did-create-window', (second) => followScreens(second, onBack))

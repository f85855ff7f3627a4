/**
 * Stands in for Electron, so that the built main and preload run unchanged with a page of Chromium as their window. As in
 * Electron, what the program does not guard is allowed. Not played: the isolated world of the preload, structured clone,
 * and the page's own scheme, whose place an https origin takes. What is here is held against Electron's own declarations
 * by drift.ts; members that begin with `stage` are for the tests alone.
 */
export { app } from './double/app.ts'
export { session } from './double/session.ts'
export { dialog, Menu, nativeTheme, screen, systemPreferences } from './double/system.ts'
export { BrowserWindow, ipcMain, protocol } from './double/window.ts'

import { join } from 'node:path'
import type { WebPreferences } from 'electron'

/** Where the built preload lies. @param built the folder of what was built */
export const preloadIn = (built: string): string => join(built, 'preload', 'preload.cjs')

/**
 * What a window's page is and may not be. Most of it is how Electron comes; it is written out so that neither a newer
 * Electron nor an edit here changes it unseen (tests/main/securityList.test.ts).
 *
 * @param preload path of the built preload
 */
export const webPreferences = (preload: string): WebPreferences => ({
  preload,
  sandbox: true,
  contextIsolation: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  navigateOnDragDrop: false,
  // A dictionary would be fetched from elsewhere.
  spellcheck: false,
})

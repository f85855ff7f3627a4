import { userInfo } from 'node:os'
import { join, resolve } from 'node:path'
import { app, BrowserWindow, session } from 'electron'
import type { TFunction } from 'i18next'
import { filesNamed } from './opened/offerFile.ts'
import { createReports, type Reports } from './reports/reports.ts'
import { type ServiceClient, startServices } from './serviceClient.ts'
import { liveTexts } from './texts.ts'
import { cameraQuestion } from './window/camera.ts'
import { tellUnwritten } from './window/downloads.ts'
import { explainAndLeave, watchEngine, watchPage } from './window/faults.ts'
import { guardPermissions, keepOffNetwork, keepToPage } from './window/guards.ts'
import { openWindow } from './window/openWindow.ts'
import { openFromOutside } from './window/outside.ts'
import { declareScheme, servePage } from './window/pageProtocol.ts'
import { showSystemParts } from './window/systemParts.ts'
import { preloadIn, webPreferences } from './window/webPreferences.ts'
import { forwardCalls } from './window/windowCalls.ts'

/** The desktop program: a window of its own on the services. Built, this file lies in `out/main`. */
const built = join(import.meta.dirname, '..')

/** Puts the data where `--data=DIR` says, and what the window's engine writes beside it, in a folder of its own. */
const placeData = (): void => {
  const given = app.commandLine.getSwitchValue('data')
  if (given !== '') app.setPath('userData', resolve(given))
  app.setPath('sessionData', join(app.getPath('userData'), 'window'))
}

/** Quits only after the data is closed, so that nothing half written is left. */
const closeBeforeQuit = (services: ServiceClient): void => {
  let isClosed = false
  app.on('will-quit', (event) => {
    if (isClosed) return
    event.preventDefault()
    isClosed = true
    void services.close().finally(() => app.quit())
  })
}

const run = async (t: TFunction, reports: Reports): Promise<void> => {
  const outside = openFromOutside(filesNamed(process.argv.slice(1), process.cwd()))
  await app.whenReady()
  const services = await startServices({ dataDir: app.getPath('userData'), who: userInfo().username })
  closeBeforeQuit(services)
  guardPermissions(session.defaultSession, cameraQuestion(t))
  keepOffNetwork(session.defaultSession)
  tellUnwritten(session.defaultSession, () => BrowserWindow.getAllWindows())
  servePage(join(built, 'renderer'), services)
  forwardCalls(services)
  const { open } = await showSystemParts(services, t)
  watchEngine(reports)
  await openWindow(built, services, (window) => watchPage(window, reports, t))
  outside.give(open)
}

declareScheme()
placeData()
app.on('web-contents-created', (_event, contents) => keepToPage(contents, webPreferences(preloadIn(built))))
app.on('window-all-closed', () => app.quit())
if (app.requestSingleInstanceLock()) {
  const t = liveTexts()
  const reports = createReports(app.getPath('userData'), () => new Date())
  run(t, reports).catch((error) => explainAndLeave(error, reports, t))
} else app.quit()

import { app, type BrowserWindow, dialog } from 'electron'
import type { TFunction } from 'i18next'
import type { Reports } from '../reports/reports.ts'
import { sameScreen } from './pageOrigin.ts'
import { countedRestarts } from './restarts.ts'

/** The second of two keys of a box: what has to be done about it. The first leaves things as they are. */
const DO = 1

/** Puts a page in the place of one that died; one that dies again and again only when the user says so. */
const restartPage = (window: BrowserWindow, t: TFunction): (() => Promise<void>) => {
  const mayRestart = countedRestarts()
  const ask = async (): Promise<boolean> => {
    const { response } = await dialog.showMessageBox({
      type: 'error',
      message: t('hosts:fault.again'),
      detail: t('hosts:fault.kept'),
      buttons: [t('hosts:menu.exit'), t('hosts:fault.start')],
      defaultId: DO,
      cancelId: 0,
    })
    return response === DO
  }
  return async () => {
    const url = window.webContents.getURL()
    if (mayRestart(Date.now()) || (await ask())) await window.loadURL(sameScreen(url))
    else app.quit()
  }
}

/** A page that answers nothing any more may be waited for or started again; the question goes when it answers. */
const offerRestart = (window: BrowserWindow, t: TFunction): void => {
  let question: AbortController | null = null
  const ask = async (signal: AbortSignal): Promise<void> => {
    const { response } = await dialog.showMessageBox({
      type: 'warning',
      message: t('hosts:fault.silent'),
      detail: t('hosts:fault.kept'),
      buttons: [t('hosts:fault.wait'), t('hosts:fault.start')],
      defaultId: 0,
      cancelId: 0,
      signal,
    })
    if (response === DO && !signal.aborted) window.webContents.forcefullyCrashRenderer()
  }
  window.on('unresponsive', () => {
    question?.abort()
    question = new AbortController()
    void ask(question.signal)
  })
  window.on('responsive', () => question?.abort())
}

/** Sees to it that a page that dies or falls silent is started again and explained, with a report kept on this machine. */
export const watchPage = (window: BrowserWindow, reports: Reports, t: TFunction): void => {
  const restart = restartPage(window, t)
  window.webContents.on('render-process-gone', (_event, { reason, exitCode }) => {
    if (reason === 'clean-exit') return
    reports.note({ part: 'window', error: `${reason} ${exitCode}` })
    void restart()
  })
  offerRestart(window, t)
}

/** Writes down when the engine loses one of its own processes, the one of the graphics above all: it makes another, and the page draws anew. */
export const watchEngine = (reports: Reports): void => {
  app.on('child-process-gone', (_event, { type, reason, exitCode }) => {
    if (reason !== 'clean-exit') reports.note({ part: 'graphics', error: `${type} ${reason} ${exitCode}` })
  })
}

/** The program could not be started at all: said in a box of the system, as there is no window to say it. */
export const explainAndLeave = (error: unknown, reports: Reports, t: TFunction): void => {
  reports.note({ part: 'program', error })
  dialog.showErrorBox(t('hosts:fault.notStarted'), t('hosts:fault.kept'))
  app.exit(1)
}

import { type BrowserWindow, ipcMain } from 'electron'
import { failed, problem } from '../../geometry/result.ts'
import type { ServiceClient } from '../serviceClient.ts'
import { isOwnFrame } from './pageOrigin.ts'

/** Passes the page's calls to the services; messages from anywhere else are refused or ignored. */
export const forwardCalls = (services: ServiceClient): void => {
  ipcMain.handle('call', ({ senderFrame }, name: unknown, input: unknown, callId: unknown) =>
    isOwnFrame(senderFrame) && typeof name === 'string' && typeof callId === 'string'
      ? services.call(name, input, callId)
      : failed(problem('unknownCall', '', { name: '' })),
  )
  ipcMain.on('cancel', ({ senderFrame }, callId: unknown) => {
    if (isOwnFrame(senderFrame) && typeof callId === 'string') services.cancel(callId)
  })
}

/** Tells the window's page what the services tell, as long as the window is there. */
export const forwardEvents = (services: ServiceClient, window: BrowserWindow): void => {
  const stop = services.onEvent((event) => window.webContents.send('event', event))
  window.once('closed', stop)
}

import { EventEmitter } from 'node:events'
import type { Download, Frame } from '@playwright/test'
import type { CallbackResponse, OnBeforeRequestListenerDetails, Session } from 'electron'
import { stage } from '../stage.ts'
import { asOwn } from './origin.ts'
import { preventable } from './preventable.ts'

type PermissionHandler = NonNullable<Parameters<Session['setPermissionRequestHandler']>[0]>
type BeforeRequest = (details: OnBeforeRequestListenerDetails, answer: (response: CallbackResponse) => void) => void

const grantAll: PermissionHandler = (_contents, _permission, answer) => answer(true)
let askPermission = grantAll
const fetchAll: BeforeRequest = (_details, answer) => answer({})
let beforeRequest = fetchAll

export const session = {
  defaultSession: Object.assign(new EventEmitter(), {
    setPermissionRequestHandler: (handler: PermissionHandler | null) => {
      askPermission = handler ?? grantAll
    },
    setPermissionCheckHandler: (_handler: unknown) => undefined,
    setDevicePermissionHandler: (_handler: unknown) => undefined,
    webRequest: {
      onBeforeRequest: (handler: BeforeRequest | null) => {
        beforeRequest = handler ?? fetchAll
      },
    },
  }),
}

/** Asks the program whether a frame of its page may. */
export const isPermitted = (frame: Frame, permission: string, details: object): Promise<boolean> =>
  new Promise((resolve) => {
    const asker = { isMainFrame: frame.parentFrame() === null, requestingUrl: asOwn(frame.url()) }
    askPermission(null as never, permission as never, resolve, { ...details, ...asker })
  })

/** Asks the program whether an address may be fetched. */
export const isFetched = (url: string): Promise<boolean> =>
  new Promise((resolve) => beforeRequest({ url: asOwn(url) } as never, ({ cancel }) => resolve(cancel !== true)))

/** What becomes of a file that the page hands over: where the stage's disk is full, it is not written. */
export const playDownload = async (download: Download): Promise<void> => {
  const item = Object.assign(new EventEmitter(), { getFilename: () => download.suggestedFilename() })
  session.defaultSession.emit('will-download', preventable(), item)
  const failed = stage().isDiskFull || (await download.failure()) !== null
  item.emit('done', {}, failed ? 'interrupted' : 'completed')
}

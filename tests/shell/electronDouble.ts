import { EventEmitter } from 'node:events'
import { readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import type { Download, Frame, Page, Route } from '@playwright/test'
import { stage } from './stage.ts'

/**
 * Stands in for Electron, so that the built main and preload run unchanged with a page of Chromium as their window. As in
 * Electron, what the program does not guard is allowed. Not played: the isolated world of the preload, structured clone,
 * and the page's own scheme, whose place an https origin takes.
 */
const OWN_ORIGIN = 'camberwright://app'
const STAGED_ORIGIN = 'https://app.camberwright.test'

type Handler = (event: unknown, ...args: unknown[]) => unknown
type PermissionHandler = (
  contents: unknown,
  permission: string,
  answer: (granted: boolean) => void,
  details: object,
) => void

const preventable = () => {
  const event = {
    isPrevented: false,
    preventDefault: () => {
      event.isPrevented = true
    },
  }
  return event
}

class App extends EventEmitter {
  readonly paths = new Map([['userData', tmpdir()]])
  readonly commandLine = { getSwitchValue: (name: string) => (name === 'data' ? stage().dataDir : '') }
  whenReady = async () => undefined
  requestSingleInstanceLock = () => true
  getPath = (name: string) => this.paths.get(name)
  setPath = (name: string, path: string) => void this.paths.set(name, path)
  quit = () => {
    const event = preventable()
    this.emit('will-quit', event)
    if (!event.isPrevented) stage().ended.resolve()
  }
}

export const app = new App()

const schemes = new Map<string, (request: Request) => Promise<Response>>()
export const protocol = {
  registerSchemesAsPrivileged: () => undefined,
  handle: (scheme: string, handler: (request: Request) => Promise<Response>) => void schemes.set(scheme, handler),
}

let askPermission: PermissionHandler = (_contents, _permission, answer) => answer(true)
export const session = {
  defaultSession: Object.assign(new EventEmitter(), {
    setPermissionRequestHandler: (handler: PermissionHandler) => {
      askPermission = handler
    },
    setPermissionCheckHandler: () => undefined,
    setDevicePermissionHandler: () => undefined,
  }),
}

/** What becomes of a file that the page hands over: where the stage's disk is full, it is not written. */
const playDownload = async (download: Download): Promise<void> => {
  const item = Object.assign(new EventEmitter(), { getFilename: () => download.suggestedFilename() })
  session.defaultSession.emit('will-download', preventable(), item)
  const failed = stage().isDiskFull || (await download.failure()) !== null
  item.emit('done', {}, failed ? 'interrupted' : 'completed')
}

const handlers = new Map<string, Handler>()
export const ipcMain = Object.assign(new EventEmitter(), {
  handle: (channel: string, handler: Handler) => void handlers.set(channel, handler),
})

export const Menu = { setApplicationMenu: () => undefined, buildFromTemplate: () => null }
export const screen = { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] }

const asOwn = (url: string): string => url.replace(STAGED_ORIGIN, OWN_ORIGIN)

const senderOf = (frame: Frame) => ({
  senderFrame: { url: asOwn(frame.url()), parent: frame.parentFrame() },
})

/** Run in the page before anything else: Electron's half of the preload, then the preload itself. */
const preloadScript = (preload: string): string => `(() => {
  const heard = new Map()
  window.stageHear = (channel, args) => { for (const listener of heard.get(channel) ?? []) listener({}, ...args) }
  const ipcRenderer = {
    invoke: (channel, ...args) => window.stageInvoke(channel, args),
    send: (channel, ...args) => void window.stageSend(channel, args),
    on: (channel, listener) => void heard.set(channel, [...(heard.get(channel) ?? []), listener]),
    off: (channel, listener) => void heard.set(channel, (heard.get(channel) ?? []).filter((one) => one !== listener)),
  }
  const contextBridge = { exposeInMainWorld: (name, api) => Object.defineProperty(window, name, { value: api }) }
  Notification.requestPermission = async () => ((await window.stagePermit('notifications')) ? 'granted' : 'denied')
  navigator.wakeLock.request = async (type) => {
    if (!(await window.stagePermit(type + '-wake-lock'))) throw new DOMException('denied', 'NotAllowedError')
    return Object.assign(new EventTarget(), { release: async () => undefined })
  }
  const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices)
  navigator.mediaDevices.getUserMedia = async (asked) => {
    const mediaTypes = ['video', 'audio'].filter((each) => asked[each])
    if (!(await window.stagePermit('media', { mediaTypes }))) throw new DOMException('denied', 'NotAllowedError')
    return ask(asked)
  }
  const require = (name) => {
    if (name !== 'electron') throw new Error('a sandboxed preload cannot require ' + name)
    return { contextBridge, ipcRenderer }
  }
  ${preload}
})()`

class Contents extends EventEmitter {
  page: Page | null = null
  openHandler: (details: { url: string }) => { action: string } = () => ({ action: 'allow' })
  setWindowOpenHandler = (handler: typeof this.openHandler) => {
    this.openHandler = handler
  }
  send = (channel: string, ...args: unknown[]) => {
    const hear = ([name, values]: [string, unknown[]]) =>
      (window as unknown as { stageHear(channel: string, args: unknown[]): void }).stageHear(name, values)
    // A window that is closing hears no more.
    this.page?.evaluate(hear, [channel, args] as [string, unknown[]]).catch(() => undefined)
  }
}

interface WindowOptions {
  readonly webPreferences: { readonly preload: string }
}

export class BrowserWindow extends EventEmitter {
  static readonly all: BrowserWindow[] = []
  static getAllWindows = () => BrowserWindow.all
  readonly webContents = new Contents()
  readonly options: WindowOptions
  show = () => undefined
  focus = () => undefined
  isMinimized = () => false
  getNormalBounds = () => ({ x: 10, y: 10, width: 1200, height: 800 })

  constructor(options: WindowOptions) {
    super()
    this.options = options
    BrowserWindow.all.push(this)
  }

  async loadURL(url: string): Promise<void> {
    const page = await stage().context.newPage()
    this.webContents.page = page
    await this.connect(page)
    page.on('popup', (popup) => this.ask(popup))
    page.on('download', (download) => void playDownload(download))
    page.once('close', () => this.end())
    await page.goto(url.replace(OWN_ORIGIN, STAGED_ORIGIN))
    this.emit('ready-to-show')
    stage().opened.resolve(page)
  }

  async connect(page: Page): Promise<void> {
    await page.exposeBinding('stageInvoke', ({ frame }, channel: string, args: unknown[]) =>
      handlers.get(channel)?.(senderOf(frame), ...args),
    )
    await page.exposeBinding('stageSend', ({ frame }, channel: string, args: unknown[]) => {
      ipcMain.emit(channel, senderOf(frame), ...args)
    })
    await page.exposeBinding(
      'stagePermit',
      (_, permission: string, details: object = {}) =>
        new Promise((resolve) => askPermission(this.webContents, permission, resolve, details)),
    )
    await page.addInitScript(preloadScript(readFileSync(this.options.webPreferences.preload, 'utf8')))
    await page.route('**/*', (route) => this.answer(route))
  }

  /** The page's own scheme is answered by the program; the way to any other page is asked for first. */
  async answer(route: Route): Promise<void> {
    const request = route.request()
    if (request.url().startsWith(`${STAGED_ORIGIN}/`)) return this.serve(route)
    const event = preventable()
    if (request.isNavigationRequest()) this.webContents.emit('will-navigate', event)
    return event.isPrevented ? route.abort('aborted') : route.fulfill({ status: 200, body: 'elsewhere' })
  }

  async serve(route: Route): Promise<void> {
    const request = route.request()
    const response = await schemes.get('camberwright')?.(
      new Request(asOwn(request.url()), {
        method: request.method(),
        headers: await request.allHeaders(),
        body: request.method() === 'POST' ? new Uint8Array(request.postDataBuffer() ?? []) : null,
      }),
    )
    if (response === undefined) return route.abort()
    await route.fulfill({
      status: response.status,
      headers: Object.fromEntries(response.headers),
      body: Buffer.from(await response.arrayBuffer()),
    })
  }

  ask(popup: Page): void {
    if (this.webContents.openHandler({ url: popup.url() }).action === 'deny') void popup.close()
  }

  end(): void {
    this.emit('close')
    this.emit('closed')
    app.emit('window-all-closed')
  }
}

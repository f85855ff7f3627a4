import { EventEmitter } from 'node:events'
import { readFileSync } from 'node:fs'
import type { Frame, Page, Request as PageRequest, Route } from '@playwright/test'
import type { BrowserWindowConstructorOptions, IpcMain, Rectangle, WebContents } from 'electron'
import { stage } from '../stage.ts'
import { app } from './app.ts'
import { asOwn, asStaged, STAGED_ORIGIN } from './origin.ts'
import { preloadScript } from './page.ts'
import { preventable } from './preventable.ts'
import { isFetched, isPermitted, playDownload } from './session.ts'

type Handler = Parameters<IpcMain['handle']>[1]
type OpenHandler = Parameters<WebContents['setWindowOpenHandler']>[0]

type Serve = (request: Request) => Response | Promise<Response>

const schemes = new Map<string, Serve>()
export const protocol = {
  registerSchemesAsPrivileged: (_schemes: unknown) => undefined,
  handle: (scheme: string, handler: Serve) => void schemes.set(scheme, handler),
}

const handlers = new Map<string, Handler>()
export const ipcMain = Object.assign(new EventEmitter(), {
  handle: (channel: string, handler: Handler) => void handlers.set(channel, handler),
})

const senderOf = (frame: Frame) => ({
  senderFrame: { url: asOwn(frame.url()), parent: frame.parentFrame() },
})

/** @returns null: of a window that is only being opened; whether it may is asked elsewhere */
const frameOf = (request: PageRequest): Frame | null => {
  try {
    return request.frame()
  } catch {
    return null
  }
}

class Contents extends EventEmitter {
  stagePage: Page | null = null
  stageOpenHandler: OpenHandler = () => ({ action: 'allow' })
  setWindowOpenHandler = (handler: OpenHandler) => {
    this.stageOpenHandler = handler
  }
  private zoomLevel = 0
  getZoomLevel = () => this.zoomLevel
  setZoomLevel = (level: number) => {
    this.zoomLevel = level
  }
  getURL = () => asOwn(this.stagePage?.url() ?? '')
  forcefullyCrashRenderer = () => void this.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 5 })
  send = (channel: string, ...args: unknown[]) => {
    const hear = ([name, values]: [string, unknown[]]) =>
      (window as unknown as { stageHear(channel: string, args: unknown[]): void }).stageHear(name, values)
    // A window that is closing hears no more.
    this.stagePage?.evaluate(hear, [channel, args] as [string, unknown[]]).catch(() => undefined)
  }
}

export class BrowserWindow extends EventEmitter {
  private static readonly all: BrowserWindow[] = []
  static getAllWindows = () => BrowserWindow.all
  readonly webContents = new Contents()
  private readonly preload: string
  show = () => undefined
  focus = () => undefined
  restore = () => undefined
  isMinimized = () => false
  private bounds: Rectangle
  private maximized = false
  private fullScreen = false
  isMaximized = () => this.maximized
  isFullScreen = () => this.fullScreen
  maximize = () => {
    this.maximized = true
  }
  setFullScreen = (on: boolean) => {
    this.fullScreen = on
  }
  getNormalBounds = () => this.bounds
  setBounds = (bounds: Partial<Rectangle>) => {
    this.bounds = { ...this.bounds, ...bounds }
  }

  constructor({ webPreferences, x = 10, y = 10, width = 800, height = 600 }: BrowserWindowConstructorOptions) {
    super()
    this.bounds = { x, y, width, height }
    this.preload = readFileSync(webPreferences?.preload ?? '', 'utf8')
    BrowserWindow.all.push(this)
    app.emit('web-contents-created', {}, this.webContents)
  }

  async loadURL(url: string): Promise<void> {
    const page = this.webContents.stagePage ?? (await this.open())
    await page.goto(asStaged(url))
    this.webContents.emit('did-finish-load')
    this.emit('ready-to-show')
    stage().opened.resolve(page)
  }

  /** What Electron does for every page of the window is done for the whole context, so that a test may put another page in. */
  private async open(): Promise<Page> {
    const { context } = stage()
    await context.exposeBinding('stageInvoke', ({ frame }, channel: string, args: unknown[]) =>
      handlers.get(channel)?.(senderOf(frame) as never, ...args),
    )
    await context.exposeBinding('stageSend', ({ frame }, channel: string, args: unknown[]) => {
      ipcMain.emit(channel, senderOf(frame), ...args)
    })
    await context.exposeBinding('stagePermit', ({ frame }, permission: string, details: object = {}) =>
      isPermitted(frame, permission, details),
    )
    await context.addInitScript(preloadScript(this.preload))
    await context.route('**/*', (route) => this.answer(route))
    const page = await context.newPage()
    this.stageShow(page)
    return page
  }

  /** Puts a page in the window, in place of the one that was there. */
  stageShow(page: Page): void {
    this.webContents.stagePage = page
    page.on('popup', (popup) => this.ask(popup))
    page.on('download', (download) => void playDownload(download))
    page.once('close', () => {
      if (this.webContents.stagePage === page) this.end()
    })
  }

  /** The page's own scheme is answered by the program; the way to any other page is asked for first. */
  private async answer(route: Route): Promise<void> {
    const request = route.request()
    if (request.isNavigationRequest() && !request.url().startsWith(`${STAGED_ORIGIN}/`)) {
      const event = preventable()
      const frame = frameOf(request)
      if (frame === null) return route.abort('aborted')
      this.webContents.emit(frame.parentFrame() === null ? 'will-navigate' : 'will-frame-navigate', event)
      if (event.isPrevented) return route.abort('aborted')
    }
    if (!(await isFetched(request.url()))) return route.abort('blockedbyclient')
    if (request.url().startsWith(`${STAGED_ORIGIN}/`)) return this.serve(route)
    return route.fulfill({ status: 200, headers: { 'access-control-allow-origin': '*' }, body: 'elsewhere' })
  }

  private async serve(route: Route): Promise<void> {
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

  private ask(popup: Page): void {
    const answer = this.webContents.stageOpenHandler({ url: asOwn(popup.url()) } as never)
    if (answer.action === 'deny') return void popup.close()
    const second = new BrowserWindow({ ...answer.overrideBrowserWindowOptions })
    second.stageShow(popup)
    this.webContents.emit('did-create-window', second, {})
  }

  private end(): void {
    this.emit('close')
    this.emit('closed')
    BrowserWindow.all.splice(BrowserWindow.all.indexOf(this), 1)
    if (BrowserWindow.all.length === 0) app.emit('window-all-closed')
  }
}

import { registerHooks } from 'node:module'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { _electron, type Browser, type Page } from '@playwright/test'
import type { MenuItemConstructorOptions, Rectangle } from 'electron'
import { electronBinary } from '../../main/start/electronHost.ts'
import { setStage } from './stage.ts'

const root = join(import.meta.dirname, '..', '..')

/** The program's desktop window, running. */
export interface Shell {
  readonly page: Page
  /** How many windows are open. */
  windows(): number
  /** Presses this key in every box of the system from now on; none is shown. */
  answer(key: number): Promise<unknown>
  /** What was asked in such boxes so far, oldest first. */
  asked(): Promise<readonly string[]>
  /** Presses a word of a menu. */
  press(name: string, word: string): Promise<unknown>
  /** Chooses these files in every box of the system from now on. */
  choose(paths: readonly string[]): Promise<unknown>
  /** The program is started a second time, with these files. */
  startAgain(paths: readonly string[]): Promise<unknown>
  /** Puts the window that was opened second here, as on another screen. */
  placeSecond(bounds: Rectangle): Promise<unknown>
  /** Where it is. */
  secondBounds(): Promise<Rectangle | undefined>
  /** From now on there is one screen, with this work area. */
  leaveScreen(workArea: Rectangle): Promise<unknown>
  /** The process of the window's page dies. */
  crash(): Promise<unknown>
  /** From now on nothing can be written that the page hands over. */
  fillDisk(): Promise<unknown>
  /** Closes the window and waits until the program has quit. */
  close(): Promise<void>
}

/** Where the binary is, the same tests run on Electron itself. */
export const realElectron: string | null = electronBinary(root)

const pressIn = (menu: readonly MenuItemConstructorOptions[], name: string, word: string): void => {
  const words = menu.find(({ label }) => label === name)?.submenu
  const item = Array.isArray(words) ? words.find(({ label }) => label === word) : undefined
  if (!item?.click) throw new Error(`${name} has no word ${word} that does something`)
  item.click({} as never, undefined, {} as never)
}

const windowsOfDouble = async () => (await import('./double/window.ts')).BrowserWindow.getAllWindows()

/** The built program on the double of Electron, in this process. */
export const openOnDouble = async (dataDir: string, browser: Browser): Promise<Shell> => {
  const context = await browser.newContext()
  const stage = setStage(context, dataDir)
  const hooks = registerHooks({
    resolve: (specifier, from, next) =>
      specifier === 'electron'
        ? { url: pathToFileURL(join(import.meta.dirname, 'electronDouble.ts')).href, shortCircuit: true }
        : next(specifier, from),
  })
  await import(pathToFileURL(join(root, 'out', 'main', 'index.js')).href)
  const page = await stage.opened.promise
  return {
    page,
    windows: () => context.pages().length,
    answer: async (key) => (stage.press = key),
    asked: async () => stage.asked,
    press: async (name, word) => pressIn(stage.menu, name, word),
    choose: async (paths) => (stage.chosen = paths),
    startAgain: async (paths) => {
      const { app } = await import('./double/app.ts')
      app.emit('second-instance', {}, ['camberwright', '--data=elsewhere', ...paths], root)
    },
    placeSecond: async (bounds) => (await windowsOfDouble())[1]?.setBounds(bounds),
    secondBounds: async () => (await windowsOfDouble())[1]?.getNormalBounds(),
    leaveScreen: async (workArea) => {
      stage.screens = [workArea]
      const { screen } = await import('./double/system.ts')
      screen.emit('display-removed', {}, {})
    },
    crash: async () => {
      const { BrowserWindow } = await import('./double/window.ts')
      BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer()
    },
    fillDisk: async () => (stage.isDiskFull = true),
    close: async () => {
      await page.close()
      await stage.ended.promise
      hooks.deregister()
      await context.close()
    },
  }
}

/** The built program on the double, whose window may be given another page: what the tests of the browser run on, too. */
export const openForPages = async (dataDir: string, browser: Browser) => {
  const { page, close } = await openOnDouble(dataDir, browser)
  const { BrowserWindow } = await import('./double/window.ts')
  const [window] = BrowserWindow.getAllWindows()
  const newPage = async (): Promise<Page> => {
    const before = window?.webContents.stagePage
    const next = await page.context().newPage()
    window?.stageShow(next)
    await before?.close()
    return next
  }
  return {
    newPage,
    address: page.url(),
    close: async () => {
      await window?.webContents.stagePage?.close()
      await close()
    },
  }
}

/** The built program on Electron itself. */
export const openOnElectron = async (binary: string, dataDir: string): Promise<Shell> => {
  const unboxed = process.getuid?.() === 0 ? ['--no-sandbox'] : []
  const program = await _electron.launch({ executablePath: binary, args: [...unboxed, root, `--data=${dataDir}`] })
  return {
    page: await program.firstWindow(),
    windows: () => program.windows().length,
    answer: (key) =>
      program.evaluate(({ dialog }, response) => {
        const place = globalThis as { boxes?: string[] }
        place.boxes ??= []
        dialog.showMessageBox = async (...args: unknown[]) => {
          place.boxes?.push((args.at(-1) as { message: string }).message)
          return { response, checkboxChecked: false }
        }
      }, key),
    asked: () => program.evaluate(() => (globalThis as { boxes?: string[] }).boxes ?? []),
    press: (name, word) =>
      program.evaluate(
        ({ Menu }, [menuLabel, label]) =>
          (Menu.getApplicationMenu()?.items ?? [])
            .find((menu) => menu.label === menuLabel)
            ?.submenu?.items.find((item) => item.label === label)
            ?.click(),
        [name, word] as const,
      ),
    choose: (paths) =>
      program.evaluate(({ dialog }, filePaths) => {
        dialog.showOpenDialog = async () => ({ canceled: filePaths.length === 0, filePaths: [...filePaths] })
      }, paths),
    startAgain: (paths) =>
      program.evaluate(({ app }, args) => void app.emit('second-instance', {}, ['camberwright', ...args], '/'), paths),
    placeSecond: (bounds) =>
      program.evaluate(({ BrowserWindow }, place) => BrowserWindow.getAllWindows()[1]?.setBounds(place), bounds),
    secondBounds: () => program.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[1]?.getNormalBounds()),
    leaveScreen: (workArea) =>
      program.evaluate(({ screen }, area) => {
        screen.getAllDisplays = () => [{ workArea: area } as Electron.Display]
        screen.emit('display-removed', {}, {})
      }, workArea),
    crash: () =>
      program.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer()),
    // A device that takes nothing stands in for the disk.
    fillDisk: () =>
      program.evaluate(({ session }) => {
        session.defaultSession.on('will-download', (_event, item) => item.setSavePath('/dev/full'))
      }),
    close: () => program.close(),
  }
}

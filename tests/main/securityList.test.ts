import { EventEmitter } from 'node:events'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { WebContents } from 'electron'
import { describe, expect, it } from 'vitest'
import { guardHeaders } from '../../main/page/contentPolicy.ts'
import { keepToPage } from '../../main/window/guards.ts'
import { isOwnAddress, isOwnFrame, PAGE_ORIGIN, sameScreen } from '../../main/window/pageOrigin.ts'
import { webPreferences } from '../../main/window/webPreferences.ts'

/** Electron's own list of what makes a program safe, in its order; DEVELOPERS.md says where each is seen to. */
const root = join(import.meta.dirname, '..', '..')

const filesIn = (folder: string): readonly string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => readFileSync(join(root, folder, name), 'utf8'))

const main = filesIn('main').join('\n')
const page = filesIn('renderer').join('\n') + readFileSync(join(root, 'renderer', 'index.html'), 'utf8')
const preferences = webPreferences('preload.cjs')

/** What the guard of a window does about one of its events. */
const isPrevented = (event: string): boolean => {
  let prevented = false
  const contents = Object.assign(new EventEmitter(), { setWindowOpenHandler: () => undefined })
  keepToPage(contents as unknown as WebContents, preferences)
  contents.emit(event, { preventDefault: () => (prevented = true) })
  return prevented
}

describe('Electron’s security list', () => {
  it('1 loads nothing but what is the program’s own', () => {
    expect(isOwnAddress(`${PAGE_ORIGIN}/index.html`)).toBe(true)
    expect(isOwnAddress('http://elsewhere.invalid/')).toBe(false)
    expect(sameScreen(`${PAGE_ORIGIN}/?a=b#plan/06`)).toBe(`${PAGE_ORIGIN}/?after=fault#plan/06`)
    expect(sameScreen('https://elsewhere.invalid/#plan/06')).toBe(`${PAGE_ORIGIN}/?after=fault`)
    expect(main).not.toMatch(/loadURL\((?!`\$\{PAGE_ORIGIN\}\/|sameScreen\()|loadFile\(/)
  })

  it('2 gives no page Node', () => {
    expect(preferences).toMatchObject({
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
    })
  })

  it('3 isolates the preload’s world', () => expect(preferences.contextIsolation).toBe(true))
  it('4 boxes every page in', () => expect(preferences.sandbox).toBe(true))

  it('5 answers every request for a permission', () => {
    // What it answers: guards.test.ts, and the window's own tests.
    expect(main).toContain('guardPermissions(session.defaultSession')
  })

  it('6 leaves the web’s own security on', () => expect(preferences.webSecurity).toBe(true))

  it('7 sends a content policy that lets nothing in but the page’s own files', () => {
    const policy = guardHeaders['content-security-policy'] ?? ''
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain("script-src 'self';")
    expect(policy).not.toMatch(/unsafe|\*|https?:/)
  })

  it('8 lets no unsafe content in', () => expect(preferences.allowRunningInsecureContent).toBe(false))
  it('9 has no experimental features', () => expect(preferences.experimentalFeatures).toBe(false))

  it('10 switches no features of the engine on', () => {
    expect(preferences).not.toHaveProperty('enableBlinkFeatures')
    expect(main).not.toMatch(/enableBlinkFeatures|enable-blink-features|enable-features/)
  })

  it('11 has no page that could let pages within it open windows', () => {
    expect(page).not.toMatch(/<webview|allowpopups/i)
  })

  it('12 lets no page be put within the page', () => {
    expect(preferences.webviewTag).toBe(false)
    expect(isPrevented('will-attach-webview')).toBe(true)
  })

  it('13 goes to no other page, in any frame', () => {
    expect(['will-navigate', 'will-frame-navigate', 'will-redirect'].map(isPrevented)).toEqual([true, true, true])
    expect(preferences.navigateOnDragDrop).toBe(false)
  })

  it('14 opens no other window but the class view, which is as closed in', () => {
    let handler: (asked: { url: string }) => unknown = () => null
    const contents = Object.assign(new EventEmitter(), {
      setWindowOpenHandler: (given: typeof handler) => {
        handler = given
      },
    })
    keepToPage(contents as unknown as WebContents, preferences)
    const elsewhere = [
      'https://elsewhere.invalid/#teach//class',
      'file:///etc/passwd',
      `${PAGE_ORIGIN}/`,
      `${PAGE_ORIGIN}/#rack`,
    ]
    for (const url of [...elsewhere, `${PAGE_ORIGIN}.elsewhere.invalid/#teach//class`])
      expect(handler({ url })).toEqual({ action: 'deny' })
    expect(handler({ url: `${PAGE_ORIGIN}/#teach//class` })).toEqual({
      action: 'allow',
      overrideBrowserWindowOptions: { webPreferences: preferences },
    })
    expect(main).toMatch(/'web-contents-created'.*keepToPage/)
  })

  it('15 hands no address to the system', () => expect(main).not.toMatch(/\bopenExternal|\bopenPath/))

  it('16 stands on one version of Electron, which is the one that is here', () => {
    const wanted = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).devDependencies.electron
    expect(wanted).toMatch(/^\d+\.\d+\.\d+$/)
    expect(JSON.parse(readFileSync(join(root, 'node_modules/electron/package.json'), 'utf8')).version).toBe(wanted)
  })

  it('17 looks at who sends each message', () => {
    expect(isOwnFrame({ url: `${PAGE_ORIGIN}/`, parent: null })).toBe(true)
    expect(isOwnFrame({ url: 'https://elsewhere.invalid/', parent: null })).toBe(false)
    // One file listens, and each of its listeners looks.
    const listeners =
      main.match(/ipcMain\.(?:handle|on)\([\s\S]*?\n {2}\)|ipcMain\.(?:handle|on)\([\s\S]*?\n {2}\}\)/g) ?? []
    expect(listeners.length).toBe(main.match(/ipcMain\.(handle|on)\(/g)?.length)
    for (const listener of listeners) expect(listener).toContain('isOwnFrame(senderFrame)')
  })

  it('18 serves its page by a scheme of its own, never as a file', () => {
    expect(main).not.toMatch(/['"`]file:/)
    expect(PAGE_ORIGIN).toBe('camberwright://app')
  })

  it('20 hands the page functions of its own, and nothing of Electron', () => {
    const preload = readFileSync(join(root, 'main', 'preload.ts'), 'utf8')
    expect(preload.match(/exposeInMainWorld/g)).toHaveLength(1)
    // What Electron gives with an event holds its sender; it is never passed on.
    expect(preload).not.toMatch(/:\s*ipcRenderer[,\s}]|listener\(_|\.\.\.\w+\)/)
  })
})

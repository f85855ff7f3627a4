import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { findBrowser, hasDisplay } from '../../main/start/browserWindow.ts'
import { isBuildStale } from '../../main/start/build.ts'
import { defaultDataFolder } from '../../main/start/dataFolder.ts'
import { startOptionsOf } from '../../main/start/options.ts'
import { broughtBack, keepState, placeOf, readState } from '../../main/window/bounds.ts'
import { isOwnFrame } from '../../main/window/pageOrigin.ts'

const folder = mkdtempSync(join(tmpdir(), 'camberwright-start-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const write = (path: string, text = '', seconds = 1000): void => {
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, text)
  utimesSync(path, seconds, seconds)
}

describe('the options of npm start', () => {
  it('takes the system’s folder, any port and any host unless told', () => {
    const options = startOptionsOf([])
    expect(options).toMatchObject({ ok: true, value: { host: null, port: 0, addressOnly: false } })
  })

  it('takes files of the kinds that can be opened', () => {
    const options = startOptionsOf(['/srv/a.cwjob', '--host', 'browser', '/srv/b.ZIP'])
    expect(options).toMatchObject({ ok: true, value: { host: 'browser', files: ['/srv/a.cwjob', '/srv/b.ZIP'] } })
  })

  it('takes what it is told', () => {
    const options = startOptionsOf(['--host', 'browser', '--data', '/srv/racks', '--port', '8123', '--address'])
    expect(options).toEqual({
      ok: true,
      value: { host: 'browser', dataDir: '/srv/racks', port: 8123, addressOnly: true, help: false, files: [] },
    })
  })

  it.each([
    [['--host', 'window'], 'startHost'],
    [['--port', '65536'], 'startPort'],
    [['--port', '-1'], 'startOption'],
    [['--port', '80x'], 'startPort'],
    [['--port', ''], 'startPort'],
    [['--data'], 'startOption'],
    [['--colour', 'red'], 'startOption'],
    [['extra'], 'startFile'],
    [['notes.txt', 'a.cwjob'], 'startFile'],
  ])('refuses %j with %s', (args, code) => {
    expect(startOptionsOf(args)).toMatchObject({ ok: false, problems: [{ code }] })
  })
})

describe('where the data lies', () => {
  it.each([
    ['linux', {}, '/home/ada/.config/camberwright'],
    ['linux', { XDG_CONFIG_HOME: '/x' }, '/x/camberwright'],
    ['darwin', {}, '/home/ada/Library/Application Support/camberwright'],
    ['win32', { APPDATA: '/roaming' }, '/roaming/camberwright'],
  ] as const)('on %s with %j', (platform, env, expected) => {
    expect(defaultDataFolder({ platform, env, home: '/home/ada' })).toBe(expected)
  })
})

describe('whether a window can be shown', () => {
  it.each([
    ['linux', {}, false],
    ['linux', { DISPLAY: '' }, false],
    ['linux', { DISPLAY: ':0' }, true],
    ['linux', { WAYLAND_DISPLAY: 'wayland-0' }, true],
    ['darwin', {}, true],
    ['win32', {}, true],
  ] as const)('on %s with %j: %s', (platform, env, expected) => {
    expect(hasDisplay({ platform, env, home: '' })).toBe(expected)
  })

  it('finds a browser on the path, and none where there is none', () => {
    const bin = join(folder, 'bin')
    write(join(bin, 'chromium'))
    const machine = { platform: 'linux', env: { PATH: bin }, home: '' } as const
    expect(findBrowser(machine)).toBeNull()
    spawnSync('chmod', ['+x', join(bin, 'chromium')])
    expect(findBrowser(machine)).toBe(join(bin, 'chromium'))
  })
})

describe('whether the build is out of date', () => {
  const root = join(folder, 'project')
  const sources = [
    'main/a.ts',
    'renderer/b.tsx',
    'geometry/c.ts',
    'assets/d.json',
    'electron.vite.config.ts',
    'package.json',
  ]
  const products = [
    'out/main/index.js',
    'out/main/worker.js',
    'out/main/maker.js',
    'out/preload/preload.cjs',
    'out/renderer/index.html',
  ]
  const settle = (): void => {
    for (const path of sources) write(join(root, path), '', 1000)
    for (const path of ['main', 'renderer', 'geometry', 'assets']) utimesSync(join(root, path), 1000, 1000)
    for (const path of products) write(join(root, path), '', 2000)
  }

  it('is not where everything built is newer', () => {
    settle()
    expect(isBuildStale(root)).toBe(false)
  })

  it.each(sources)('is where %s is newer', (path) => {
    settle()
    utimesSync(join(root, path), 3000, 3000)
    expect(isBuildStale(root)).toBe(true)
  })

  it.each(products)('is where %s is missing', (path) => {
    settle()
    rmSync(join(root, path))
    expect(isBuildStale(root)).toBe(true)
  })
})

describe('the window’s place', () => {
  const screens = [
    { x: 0, y: 0, width: 1920, height: 1040 },
    { x: 1920, y: 0, width: 1280, height: 984 },
  ]
  const size = { width: 1200, height: 800 }

  it.each([
    [{ x: 100, y: 50 }, true],
    [{ x: 2500, y: 100 }, true],
    [{ x: -1000, y: 100 }, true],
    [{ x: -1100, y: 100 }, false],
    [{ x: 3190, y: 100 }, false],
    [{ x: 100, y: 1000 }, false],
    [{ x: 100, y: -900 }, false],
    [{ x: 100, y: -30 }, false],
    [{ x: 4000, y: 100 }, false],
  ])('%j kept: %s', (at, kept) => {
    expect(placeOf({ ...at, ...size }, screens)).toEqual(kept ? { ...at, ...size } : size)
  })

  it('is the first one where nothing readable was kept', () => {
    const path = join(folder, 'window.json')
    for (const text of [
      '',
      '{',
      '[]',
      '{"x":1,"y":2,"width":0,"height":3}',
      '{"x":1e999,"y":2,"width":4,"height":3}',
    ]) {
      write(path, text)
      expect(readState(path)).toBeNull()
    }
    write(path, '{"x":1,"y":2,"width":4,"height":3}')
    const kept = { x: 1, y: 2, width: 4, height: 3, maximized: false, fullScreen: false, zoomLevel: 0 }
    expect(readState(path)).toEqual(kept)
    expect(placeOf(null, screens)).toEqual({ width: 1440, height: 900 })
    const other = { ...kept, maximized: true, zoomLevel: 2.5 }
    keepState(path, other)
    expect(readState(path)).toEqual(other)
  })

  it('is never larger than the screens, and an open one is brought back when its screen goes', () => {
    const [first] = screens
    const small = [{ x: 0, y: 30, width: 1024, height: 700 }]
    expect(placeOf({ x: 0, y: 40, width: 3840, height: 2000 }, small)).toEqual({
      x: 0,
      y: 40,
      width: 1024,
      height: 700,
    })
    expect(placeOf(null, small)).toEqual({ width: 1024, height: 700 })
    expect(broughtBack({ x: 2000, y: 100, ...size }, screens)).toBeNull()
    // (1920 - 1200) / 2 and (1040 - 800) / 2.
    expect(broughtBack({ x: 2000, y: 100, ...size }, [first as (typeof screens)[0]])).toEqual({
      x: 360,
      y: 120,
      ...size,
    })
    expect(broughtBack({ x: 2000, y: 100, ...size }, small)).toEqual({ x: 0, y: 30, width: 1024, height: 700 })
    expect(broughtBack({ x: 2000, y: 100, ...size }, [])).toBeNull()
  })
})

describe('whose messages the window’s program takes', () => {
  const top = (url: string) => ({ url, parent: null })

  it('takes its own page’s', () => {
    expect(isOwnFrame(top('camberwright://app/index.html'))).toBe(true)
  })

  it.each([
    'https://app/',
    'camberwright://app',
    'camberwright://app.evil/',
    'camberwright://evil/',
    'file:///app/',
    '',
  ])('not those of %s', (url) => {
    expect(isOwnFrame(top(url))).toBe(false)
  })

  it('not those of a frame that is gone or lies within another', () => {
    expect(isOwnFrame(null)).toBe(false)
    expect(isOwnFrame({ ...top('camberwright://app/'), parent: top('camberwright://app/') as never })).toBe(false)
  })
})

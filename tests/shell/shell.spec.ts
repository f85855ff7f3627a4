import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, expect, test } from '@playwright/test'
import { lockFolder } from '../../main/database/lock.ts'
import type {} from '../../renderer/app/transport.ts'
import { soundJob } from '../main/commandBench.ts'
import { openOnDouble, openOnElectron, realElectron, type Shell } from './openShell.ts'

/** Where no page of the program may ever go; nothing answers there. */
const ELSEWHERE = 'https://elsewhere.invalid/'
/** Long enough for a window that was not refused to be there. */
const SETTLE_MS = 500

/** What the program does in its desktop window, whatever plays the window. The tests share one window, in this order. */
const shellTests = (open: (dataDir: string, browser: Browser) => Promise<Shell>): void => {
  const dataDir = mkdtempSync(join(tmpdir(), 'camberwright-shell-'))
  let shell: Shell

  test.beforeAll(async ({ browser }) => {
    shell = await open(dataDir, browser)
  })
  test.afterAll(() => rmSync(dataDir, { recursive: true, force: true }))

  test('shows the rack of the demo workshop', async () => {
    await expect(shell.page.getByText('Low-angle jack iron', { exact: true })).toBeVisible()
  })

  test('gives the page call, cancel and onEvent, and nothing of Electron or Node', async () => {
    const given = await shell.page.evaluate(() => ({
      own: Object.keys(window.camberwright ?? {}).sort(),
      others: ['require', 'process', 'module', 'electron'].filter((name) => name in window),
    }))
    expect(given).toEqual({ own: ['call', 'cancel', 'onEvent'], others: [] })
  })

  test('answers calls, and refuses names that the contract lacks', async () => {
    const answers = await shell.page.evaluate(async () => [
      await window.camberwright?.call('workshop.get', {}, 'one'),
      await window.camberwright?.call('database.drop' as 'workshop.get', {}, 'two'),
    ])
    expect(answers[0]).toMatchObject({ ok: true, value: { rack: 'demo' } })
    expect(answers[1]).toMatchObject({ ok: false, problems: [{ code: 'unknownCall' }] })
  })

  test('takes a file from the page, as plain bytes alone, and reads it', async () => {
    const answers = await shell.page.evaluate(async () => {
      const post = (type: string) =>
        fetch('/blob', { method: 'POST', headers: { 'content-type': type }, body: 'code,name' })
      const { blobId } = (await (await post('application/octet-stream')).json()) as { blobId: string }
      return [(await post('text/plain')).status, await window.camberwright?.call('inOut.look', { blobId }, 'two')]
    })
    expect(answers).toMatchObject([415, { ok: true, value: { form: 'csv', noun: 'tool', faultCount: 0 } }])
  })

  test('tells the page what changed', async () => {
    const heard = shell.page.evaluate(
      () => new Promise((resolve) => window.camberwright?.onEvent((event) => resolve(event))),
    )
    await shell.page.evaluate(() =>
      window.camberwright?.call('settings.edit', { lengthUnit: 'inch', theme: 'light' }, 'three'),
    )
    expect(await heard).toMatchObject({ type: 'changed', noun: 'settings' })
  })

  test('keeps the content policy', async () => {
    const ran = await shell.page.evaluate(() => {
      const script = document.createElement('script')
      script.textContent = 'window.ranFromText = true'
      document.body.append(script)
      return 'ranFromText' in window
    })
    expect(ran).toBe(false)
  })

  test('lets the page keep the screen on, and grants no other permission unasked', async () => {
    const kept = await shell.page.evaluate(async () => {
      const lock = await navigator.wakeLock.request('screen')
      await lock.release()
      return 'kept'
    })
    expect(kept).toBe('kept')
    expect(await shell.page.evaluate(() => Notification.requestPermission())).toBe('denied')
  })

  test('asks before the camera is used, each time until it may, and never gives sound', async () => {
    const outcome = (asked: MediaStreamConstraints) =>
      shell.page.evaluate(
        (constraints) =>
          navigator.mediaDevices.getUserMedia(constraints).then(
            () => 'seen',
            (error: Error) => error.name,
          ),
        asked,
      )
    await shell.answer(0)
    expect(await outcome({ video: true })).toBe('NotAllowedError')
    await shell.answer(1)
    // A machine without a camera answers that it has none, which is not that it may not be used.
    expect(['seen', 'NotFoundError']).toContain(await outcome({ video: true }))
    expect(['seen', 'NotFoundError']).toContain(await outcome({ video: true }))
    expect(await shell.asked()).toEqual(['May Camberwright use the camera?', 'May Camberwright use the camera?'])
    expect(await outcome({ audio: true })).toBe('NotAllowedError')
    expect(await outcome({ video: true, audio: true })).toBe('NotAllowedError')
  })

  test('fetches nothing from elsewhere', async () => {
    const outcome = await shell.page.evaluate(async (url) => {
      const page = await (await fetch('/index.html')).text()
      const fetched = await fetch(url).then(
        () => 'fetched',
        () => 'not fetched',
      )
      return [page.includes('<title>'), fetched]
    }, ELSEWHERE)
    expect(outcome).toEqual([true, 'not fetched'])
  })

  test('opens no second window', async () => {
    await shell.page.evaluate((url) => void window.open(url), ELSEWHERE)
    await shell.page.waitForTimeout(SETTLE_MS)
    // The double closes what was denied only after Chromium has opened it; on a busy machine that takes its time.
    await expect.poll(() => shell.windows()).toBe(1)
  })

  test('goes to no other page', async () => {
    const { page } = shell
    const before = page.url()
    await page.evaluate((url) => location.assign(url), ELSEWHERE)
    await page.waitForTimeout(SETTLE_MS)
    expect(page.url()).toBe(before)
    await expect(page.getByRole('main')).toBeVisible()
  })

  test('opens files: by a second start, from the menu; remembers which, and forgets what is gone', async () => {
    const { page } = shell
    const at = (name: string) => join(dataDir, name)
    const recent = () => JSON.parse(readFileSync(at('recent.json'), 'utf8'))
    writeFileSync(at('jack & try.cwjob'), JSON.stringify(soundJob))
    await shell.startAgain([at('jack & try.cwjob')])
    await expect(page.getByText('This shows the job of the file jack & try.cwjob')).toBeVisible()
    writeFileSync(at('irons.csv'), 'name,widthMm\nOld jack,51\n')
    await shell.choose([at('irons.csv')])
    await shell.press('File', 'Open…')
    await expect(page.getByRole('dialog')).toContainText('Old jack')
    await page.keyboard.press('Escape')
    writeFileSync(at('roof.cwlesson'), '{"title": 1}')
    await shell.startAgain([at('roof.cwlesson')])
    await expect(page.getByRole('dialog', { name: 'roof.cwlesson cannot be opened:' })).toBeVisible()
    await page.keyboard.press('Escape')
    writeFileSync(at('broken.cwjob'), '{"version": 1')
    await shell.startAgain(['notes.txt', at('broken.cwjob')])
    await expect(page.getByRole('dialog', { name: 'broken.cwjob cannot be opened:' })).toBeVisible()
    await page.keyboard.press('Escape')
    expect(recent()).toEqual(['broken.cwjob', 'roof.cwlesson', 'irons.csv', 'jack & try.cwjob'].map(at))
    const before = (await shell.asked()).length
    rmSync(at('jack & try.cwjob'))
    await shell.startAgain([at('jack & try.cwjob')])
    await expect
      .poll(async () => (await shell.asked()).slice(before))
      .toEqual(['jack & try.cwjob could not be opened.'])
    expect(recent()).toEqual(['broken.cwjob', 'roof.cwlesson', 'irons.csv'].map(at))
  })

  test('goes where the native menu says, and looks as it says; a sheet is answered first', async () => {
    const { page } = shell
    await shell.press('Go', 'Plan')
    await expect(page).toHaveURL(/#plan/)
    const theme = () => page.evaluate(() => document.documentElement.dataset.theme)
    await shell.press('View', 'Dark')
    await expect.poll(theme).toBe('dark')
    await shell.press('Help', 'Keys')
    await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible()
    await shell.press('Go', 'Rack')
    await shell.press('View', 'Light')
    await expect.poll(theme).toBe('light')
    await expect(page).toHaveURL(/#plan/)
    await page.keyboard.press('Escape')
    await shell.press('Go', 'Rack')
    await expect(page).toHaveURL(/#rack/)
  })

  test('starts a page that died again where it was, explains it and shows the report; asks before it does so for ever', async () => {
    const { page } = shell
    await shell.press('Go', 'Plan')
    await expect(page).toHaveURL(/#plan/)
    await shell.crash()
    const again = page.getByRole('dialog', { name: 'The window was started again' })
    await expect(again).toBeVisible()
    await expect(page).toHaveURL(/#plan/)
    await again.getByRole('button', { name: 'Show the reports' }).click()
    const reports = page.getByRole('dialog', { name: 'Reports of faults' })
    await expect(reports).toContainText('part: window')
    await reports.getByRole('button', { name: 'Delete' }).click()
    await expect(reports).toContainText('Nothing has failed so far.')
    await page.keyboard.press('Escape')
    await expect(page).toHaveURL(/\/#plan/)
    await shell.crash()
    await expect(again).toBeVisible()
    await page.keyboard.press('Escape')
    await expect(page).toHaveURL(/\/#plan/)
    const before = (await shell.asked()).length
    await shell.answer(1)
    await shell.crash()
    await expect(again).toBeVisible()
    expect((await shell.asked()).slice(before)).toEqual(['The window has stopped several times.'])
    await page.keyboard.press('Escape')
    await shell.press('Go', 'Rack')
  })

  /** Hands a file over as the screens do. */
  const handOver = (fileName: string) =>
    shell.page.evaluate((name) => {
      const link = document.createElement('a')
      link.href = URL.createObjectURL(new Blob(['steel']))
      link.download = name
      link.click()
    }, fileName)

  test('says in the page when a file could not be written, and only then', async () => {
    const status = shell.page.getByTestId('status')
    const given = shell.page.waitForEvent('download')
    await handOver('fits.stl')
    await (await given).path()
    await expect(status).not.toContainText('could not be written')
    await shell.fillDisk()
    await handOver('full.stl')
    await expect(status).toHaveText(/^This file could not be written: full\.stl\./)
  })

  test('brings the class view back from a screen that is gone, says so, and loses nothing of the lesson', async () => {
    const { page } = shell
    await page.getByRole('link', { name: 'Teach', exact: true }).click()
    await page.getByRole('button', { name: 'The seat: one curve, two planes', exact: true }).click()
    const opened = page.waitForEvent('popup')
    await page.getByRole('button', { name: 'Open the class view' }).click()
    const wall = await opened
    await expect(wall.getByRole('heading', { name: 'The wood looks along the sole' })).toBeVisible()
    await shell.placeSecond({ x: 4000, y: 0, width: 1280, height: 720 })
    await shell.leaveScreen({ x: 0, y: 0, width: 1920, height: 1040 })
    await expect(page.getByTestId('status')).toContainText('The screen that the class view stood on is gone')
    const bounds = await shell.secondBounds()
    expect(bounds?.x).toBeGreaterThanOrEqual(0)
    expect((bounds?.x ?? 0) + (bounds?.width ?? 0)).toBeLessThanOrEqual(1920)
    await page.getByRole('button', { name: 'Next', exact: true }).click()
    await expect(wall.getByRole('heading', { name: 'A common bench plane' })).toBeVisible()
    await shell.press('Go', 'Rack')
    await expect(page.getByRole('grid'), 'the menu speaks to the program, not to the class').toBeVisible()
    await shell.press('Go', 'Teach')
    await wall.close()
    await expect(page.getByRole('button', { name: 'Open the class view' })).toBeVisible()
    await shell.press('Go', 'Rack')
  })

  test('closes its data with its window, which never stays where no screen is', async () => {
    await shell.leaveScreen({ x: 3000, y: 0, width: 1280, height: 700 })
    await shell.close()
    expect(JSON.parse(readFileSync(join(dataDir, 'window.json'), 'utf8'))).toMatchObject({
      ...{ x: 3000, y: 0, width: 1280, height: 700 },
      ...{ maximized: false, fullScreen: false, zoomLevel: 0 },
    })
    const lock = lockFolder(dataDir)
    expect(lock.ok).toBe(true)
    if (lock.ok) lock.value.release()
  })
}

test.describe.configure({ mode: 'serial' })

test.describe('the desktop window, played', () => {
  shellTests(openOnDouble)
})

test.describe('the desktop window, on Electron itself', () => {
  test.skip(realElectron === null, 'Electron’s binary is not on this machine')
  shellTests((dataDir) => openOnElectron(realElectron ?? '', dataDir))
})

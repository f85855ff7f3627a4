import { execFileSync } from 'node:child_process'
import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser, Page } from '@playwright/test'
import { budgets } from '../budgets.ts'
import { expect, test } from '../support/app.ts'
import { openGrind } from '../support/grindPage.ts'
import { startHostProcess } from '../support/hostProcess.ts'

test.use({ readsAhead: true })

const out = join(import.meta.dirname, '..', '..', 'out')

/** Longer than the time between two looks of whatever looks at something (`renderer/worker/watch.ts`). */
const REST_MS = 2_700
const SHORT_REST_MS = 1_000
/** What a screen does of itself after it was opened, such as reading parts ahead, is over by then. */
const SETTLED_MS = 500

/** What an engine does for a page where something goes on: a timer that rings, a frame that is asked for, a picture painted. */
const busy = ['TimerFire', 'FireAnimationFrame', 'RequestAnimationFrame', 'FireIdleCallback', 'Paint']

const kilobytesOf = (folder: string): number =>
  readdirSync(join(out, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.c?js$/.test(name))
    .reduce((sum, name) => sum + statSync(join(out, folder, name)).size, 0) / 1000

/** Longest until a busy machine has done what a screen does of itself. */
const CALM_MS = 40_000

/** @returns by name what the engine did in all threads of the page while nobody touched it */
const doneAtRest = async (browser: Browser, page: Page, restMs: number): Promise<Readonly<Record<string, number>>> => {
  await browser.startTracing(page, { categories: ['devtools.timeline'] })
  await page.waitForTimeout(restMs)
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString('utf8')) as {
    traceEvents: readonly { readonly name: string }[]
  }
  expect(traceEvents.length).toBeGreaterThan(0)
  const counts: Record<string, number> = {}
  for (const { name } of traceEvents) if (busy.includes(name)) counts[name] = (counts[name] ?? 0) + 1
  return counts
}

/** What is done once may come late on a busy machine; what goes on and on never comes to rest. */
const expectRest = (browser: Browser, page: Page, restMs: number): Promise<void> =>
  expect(async () => expect(await doneAtRest(browser, page, restMs)).toEqual({})).toPass({ timeout: CALM_MS })

const heapMb = async (page: Page): Promise<number> => {
  const session = await page.context().newCDPSession(page)
  await session.send('HeapProfiler.collectGarbage')
  const { usedSize } = await session.send('Runtime.getHeapUsage')
  await session.detach()
  return usedSize / 1e6
}

/** Resident memory (MB), as the system tells it. */
const residentMb = (pid: number): number =>
  Number(execFileSync('ps', ['-o', 'rss=', '-p', String(pid)], { encoding: 'utf8' })) / 1000

test('what is built weighs what it may, and so does its host in memory', async () => {
  expect(kilobytesOf('renderer')).toBeLessThan(budgets.pageScriptsKb)
  expect(kilobytesOf('main') + kilobytesOf('preload')).toBeLessThan(budgets.mainKb)
  const host = await startHostProcess()
  await host.freshAddress()
  const served = process.platform === 'win32' ? 0 : residentMb(host.pid)
  await host.stop()
  expect(served).toBeLessThan(budgets.hostMb)
})

test('where nothing changes nothing runs: no timer, no frame, no paint; and the page keeps to its memory', async ({
  app,
  browser,
}) => {
  await app.emulateMedia({ reducedMotion: 'no-preference' })
  await expect(app.getByRole('heading', { level: 1 })).toBeVisible()
  await app.waitForTimeout(SETTLED_MS)
  await expectRest(browser, app, SHORT_REST_MS)
  expect(await heapMb(app)).toBeLessThan(budgets.rackHeapMb)
  await openGrind(app)
  await expect(app.getByRole('application')).toHaveAttribute('data-still', 'true')
  await app.waitForTimeout(SETTLED_MS)
  await expectRest(browser, app, REST_MS)
  expect(await heapMb(app)).toBeLessThan(budgets.modelHeapMb)
  await app.evaluate(() => void setInterval(() => undefined, 100))
  // Would this see anything at all?
  expect((await doneAtRest(browser, app, SHORT_REST_MS)).TimerFire).toBeGreaterThan(1)
})

/** Pictures over which it is judged what each makes. */
const PICTURES = 200

/**
 * What the page's scripts made for each picture while the model played (kB): in tasks that draw the scene, which begin in its
 * script, and in all. Words and figures are made anew by React six times a second, in tasks of its own.
 */
const madeAPicture = async (page: Page): Promise<{ readonly sceneKb: number; readonly allKb: number }> => {
  const session = await page.context().newCDPSession(page)
  await session.send('HeapProfiler.startSampling', {
    samplingInterval: 2048,
    includeObjectsCollectedByMajorGC: true,
    includeObjectsCollectedByMinorGC: true,
  })
  await page.evaluate(async (pictures) => {
    for (let k = 0; k < pictures; k++) await new Promise(requestAnimationFrame)
  }, PICTURES)
  const { profile } = await session.send('HeapProfiler.stopSampling')
  await session.detach()
  type Node = typeof profile.head
  const sizeOf = ({ selfSize, children }: Node): number => children.reduce((sum, each) => sum + sizeOf(each), selfSize)
  const inScene = profile.head.children.filter(({ callFrame }) => callFrame.url.includes('SceneView'))
  const aPicture = (bytes: number): number => bytes / PICTURES / 1000
  return {
    sceneKb: aPicture(inScene.reduce((sum, node) => sum + sizeOf(node), 0)),
    allKb: aPicture(sizeOf(profile.head)),
  }
}

test('@long while the model plays, drawing it makes no more than it may', async ({ app }, info) => {
  await openGrind(app)
  await app.getByRole('button', { name: 'play', exact: true }).click()
  await expect.poll(async () => Number(await app.getByTestId('sweep').textContent())).toBeGreaterThan(1)
  const { sceneKb, allKb } = await madeAPicture(app)
  const description = `${sceneKb.toFixed(1)} kB by the scene, ${allKb.toFixed(1)} kB in all`
  info.annotations.push({ type: 'made for each picture', description })
  // Would this see anything at all?
  expect(sceneKb).toBeGreaterThan(0)
  expect(sceneKb).toBeLessThan(budgets.madeAPictureKb)
})

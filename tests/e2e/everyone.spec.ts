import type { Page } from '@playwright/test'
import { exampleInput } from '../geometry/example.ts'
import { drawn, expect, expectAxeClean, takePicture, test } from '../support/app.ts'
import { dragAlong, keptUp, watchPage } from '../support/dragProbe.ts'
import { expectSweep, heldBy, openAndClose, openGrind, seekSweep } from '../support/grindPage.ts'

const key = (app: Page, name: string) => app.getByRole('button', { name, exact: true })
const words = (app: Page) => app.getByRole('region', { name: 'The scene in words' })

test('Grind is worked by keys alone, none of them fires while a field is written in, and single ones can be switched off', async ({
  app,
}) => {
  await openGrind(app)
  await app.locator('main').focus()
  await app.keyboard.press('ArrowRight')
  await expectSweep(app, 1)
  await app.keyboard.press('ArrowLeft')
  await expectSweep(app, 0)
  await app.keyboard.press('l')
  await expect(key(app, 'lower')).toBeVisible()
  await app.keyboard.press('Space')
  await expect(key(app, 'pause')).toBeVisible()
  await app.keyboard.press('Space')
  await expect(key(app, 'play')).toBeVisible()
  await app.keyboard.press('End')
  await expectSweep(app, 120)
  await app.keyboard.press('Home')
  await expectSweep(app, 0)
  const turns = app.getByRole('spinbutton', { name: 'turns, left' })
  await turns.click()
  await app.keyboard.type('1,l2')
  await expect(turns).toHaveValue(/l2/)
  await expect(key(app, 'lift')).toBeVisible()
  await app.keyboard.press('Escape')
  await app.locator('main').focus()
  await app.keyboard.press('?')
  const sheet = app.getByRole('dialog', { name: 'Keys' })
  await expect(sheet.getByText('play, or pause')).toBeVisible()
  await expectAxeClean(app)
  await takePicture(app, 'keys')
  await sheet.getByRole('checkbox').uncheck()
  await expect(sheet.getByText('(switched off)').first()).toBeVisible()
  await app.keyboard.press('Escape')
  await expect(sheet).toBeHidden()
  await app.locator('main').focus()
  await app.keyboard.press('l')
  await app.keyboard.press('ArrowRight')
  await expectSweep(app, 1)
  await expect(key(app, 'lift')).toBeVisible()
  await key(app, 'Keys').click()
  await sheet.getByRole('checkbox').check()
  await expect(sheet.getByText('(switched off)')).toHaveCount(0)
  await app.keyboard.press('Escape')
  await app.locator('main').focus()
  await app.keyboard.press('3')
  await expect(app).toHaveURL(/#set-up/)
})

test('the scene in words follows the moment and interrupts nobody while it plays; the screen stays on for it, and at the wheel', async ({
  app,
}) => {
  await openGrind(app)
  await expect(words(app)).toContainText('Touching: nothing yet.')
  await expect(words(app)).toContainText(/Projection: 130\.0\smm from the bar's axis to the edge\./)
  const list = words(app).getByRole('list')
  await expect(list).toHaveAttribute('aria-live', 'polite')
  await seekSweep(app, 20)
  await expect(words(app)).toContainText(/Touching: \d+\smm of the edge, from /)
  await expect(words(app)).toContainText(/Relief: left 0\.\d\d\smm, right 0\.\d\d\smm, wanted 0\.50\smm\./)
  await key(app, 'play').click()
  await expect(list).toHaveAttribute('aria-live', 'off')
  const word = app.getByText('screen stays on', { exact: true })
  await expect(word).toBeVisible()
  await key(app, 'pause').click()
  await expect(list).toHaveAttribute('aria-live', 'polite')
  await expect(word).toBeHidden()
  await key(app, 'Screen').click()
  await app.getByRole('checkbox', { name: /I am at the wheel/ }).check()
  await expect(word).toBeVisible()
  await app.getByRole('checkbox', { name: /I am at the wheel/ }).uncheck()
  await app.getByRole('checkbox', { name: /while a grind plays/ }).uncheck()
  await key(app, 'play').click()
  await expect(key(app, 'pause')).toBeVisible()
  await expect(word).toBeHidden()
})

/** Lets the newest worker of the page be killed, as a system short of memory does. */
const letWorkersDie = async (app: Page): Promise<void> => {
  await app.addInitScript(() => {
    const made: Worker[] = []
    const Real = Worker
    window.Worker = class extends Real {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options)
        made.push(this)
      }
    }
    Object.assign(window, {
      killWorkers: () => {
        for (const worker of made) {
          worker.terminate()
          worker.dispatchEvent(new ErrorEvent('error'))
        }
      },
    })
  })
}

test('@long a worker that is killed is said to be, and the grind comes back to where it stood', async ({ app }) => {
  await letWorkersDie(app)
  await app.reload()
  await openGrind(app)
  await seekSweep(app, 17)
  const relief = await app.getByTestId('relief-left').textContent()
  await app.evaluate(() => (window as unknown as { killWorkers(): void }).killWorkers())
  await expect(app.getByText('The part that reckons this grind has stopped.')).toBeVisible()
  await expectAxeClean(app)
  await key(app, 'Start the grind again').click()
  await expect(app.getByText('The part that reckons this grind has stopped.')).toBeHidden()
  await expectSweep(app, 17)
  expect(await app.getByTestId('relief-left').textContent()).toBe(relief)
  await key(app, 'sweep on').click()
  await expectSweep(app, 18)
})

test('a blade that is ground away says so, and what was ground before stands', async ({ app }) => {
  await openGrind(app)
  const job = exampleInput({
    blade: { widthMm: 10, thicknessMm: 2 },
    motion: { removalPerSweepMm3: 20, sweeps: 200, stepsPerSweep: 8, fingerReachMm: 4 },
    grid: { across: 21, through: 9 },
  })
  await key(app, 'Job file').click()
  await app
    .locator('input[type=file]')
    .setInputFiles({ name: 'away.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(job)) })
  await expect(app.getByText(/the blade is ground away so far that it no longer reaches the wheel/)).toBeVisible()
  await key(app, 'Back to the job').click()
  await expect(app.getByText(/ground away/)).toBeHidden()
})

test('with colours forced by the system, choices, the key that matters and the screen one is on still stand out', async ({
  app,
}) => {
  await app.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' })
  await openGrind(app)
  await seekSweep(app, 20)
  const style = (selector: string, property: 'backgroundColor' | 'borderBottomColor' | 'stroke') =>
    app
      .locator(selector)
      .first()
      .evaluate((element, name) => getComputedStyle(element)[name], property)
  const ground = (selector: string) => style(selector, 'backgroundColor')
  const border = (selector: string) => style(selector, 'borderBottomColor')
  const stroke = (selector: string) => style(selector, 'stroke')
  expect(await ground('.grind-key[data-main="true"] .grind-key-face')).not.toBe(await ground('body'))
  expect(await border('.nav a[aria-current]')).not.toBe(await border('.nav a:not([aria-current])'))
  for (const line of ['.grind-now-line', '.grind-wanted', '.grind-predicted', '.datum-line'])
    expect(await stroke(line)).not.toBe(await ground('body'))
  const ring = app.locator('.handle-hold').first()
  expect(await ring.evaluate((element) => getComputedStyle(element, '::before').borderTopColor)).not.toBe(
    await ground('body'),
  )
  await takePicture(app, 'grind-forced')
  await app.getByRole('link', { name: 'Plan' }).click()
  expect(await ground('.options label:has(:checked)')).not.toBe(await ground('.options label:not(:has(:checked))'))
})

/** One finger goes up by a hand's width from here. */
const swipeUp = async (app: Page, x: number, y: number): Promise<void> => {
  const devtools = await app.context().newCDPSession(app)
  await devtools.send('Emulation.setTouchEmulationEnabled', { enabled: true })
  await devtools.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] })
  for (let up = 30; up <= 300; up += 30)
    await devtools.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [{ x, y: y - up }] })
  await devtools.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
}

test('where the page scrolls, a finger on the model scrolls it, and keys are as large as a finger', async ({ app }) => {
  await app.setViewportSize({ width: 640, height: 900 })
  await openGrind(app)
  const model = await app.getByRole('application').boundingBox()
  if (!model) throw new Error('no model')
  await swipeUp(app, model.x + model.width / 2, model.y + model.height * 0.9)
  await expect.poll(() => app.evaluate(() => scrollY)).toBeGreaterThan(100)
  for (const each of await app.locator('.grind-key').all()) {
    const box = await each.boundingBox()
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44)
  }
})

test(
  'a drag is followed on the way, the host hears of it at its end alone, and how quick it was is told',
  {
    tag: ['@long', '@http'],
  },
  async ({ app }, info) => {
    await openGrind(app)
    await seekSweep(app, 20)
    const ring = app.getByRole('slider', { name: 'right stop screw' })
    await expect(app.locator('.scene-overlay[data-placed]')).toBeVisible()
    let asked = 0
    app.on('request', (request) => {
      if (request.url().endsWith('/call')) asked += 1
    })
    await watchPage(app)
    await dragAlong(app, ring, [60, 0])
    await drawn(app)
    const { paintMs, longTasksMs, scriptsMs } = await keptUp(app)
    const inWords = (all: readonly number[]): string =>
      `${all.length}, the longest ${Math.max(0, ...all).toFixed(0)} ms`
    const tell = (type: string, all: readonly number[]) => info.annotations.push({ type, description: inWords(all) })
    tell('movements to their pictures', paintMs)
    tell('tasks over 50 ms while dragging', longTasksMs)
    tell("the program's own part of long frames", scriptsMs)
    expect(paintMs.length).toBeGreaterThan(1)
    expect(Number(await ring.getAttribute('aria-valuenow'))).toBeGreaterThan(1)
    expect(asked, 'asked of the host while it is dragged').toBe(0)
    await app.mouse.up()
    await expect(app.getByRole('spinbutton', { name: 'turns, right' })).not.toHaveValue('1.00')
    await expect.poll(() => asked).toBeGreaterThan(0)
  },
)

test('@long Grind opened and closed again and again leaves no worker and no canvas behind', async ({ app }, info) => {
  await openGrind(app)
  await app.getByRole('link', { name: 'Rack', exact: true }).click()
  await openAndClose(app, 1)
  const before = await heldBy(app)
  await openAndClose(app, 2)
  const after = await heldBy(app)
  info.annotations.push({
    type: 'heap',
    description: `${before.heapMb.toFixed(1)} MB, then ${after.heapMb.toFixed(1)} MB`,
  })
  expect(after.workers).toBeLessThanOrEqual(before.workers)
  expect(after.strayCanvases).toBeLessThanOrEqual(before.strayCanvases)
})

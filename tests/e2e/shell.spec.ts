import type { Locator } from '@playwright/test'
import { expect, expectGoodLooks, settingKept, test } from '../support/app.ts'

test('the address holds the screen and the tool, so that loading again comes back to it', { tag: '@window' }, async ({
  app,
}) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('link', { name: 'Set up' }).click()
  await expect(app).toHaveURL(/#set-up\/\d+$/)
  await app.reload()
  await expect(app.getByRole('region', { name: 'Tool in hand' })).toContainText('Low-angle jack iron')
  await expect(app.getByRole('link', { name: 'Set up' })).toHaveAttribute('aria-current', 'page')
  await expect(app.getByLabel('projection, bar axis to edge')).toHaveValue('130.0')
})

test('only the screens that exist are offered', async ({ app }) => {
  await expect(app.getByRole('navigation', { name: 'Screens' }).getByRole('link')).toHaveText([
    'Rack',
    'Plan',
    'Set up',
    'Grind',
    'Measure',
    'Teach',
  ])
})

test('a screen without a tool leads to the rack', async ({ app }) => {
  await app.getByRole('link', { name: 'Plan' }).click()
  await app.getByRole('link', { name: 'Choose one from the rack' }).click()
  await expect(app.getByRole('grid')).toBeVisible()
})

test('lengths are read in mm, inches or thou, and the choice is kept', { tag: '@http' }, async ({ app }) => {
  const size = app.getByRole('row', { name: /Low-angle jack iron 57|Low-angle jack iron 2/ }).first()
  await expect(size).toContainText('57.0 × 3.2')
  const kept = settingKept(app)
  await app.getByLabel('Unit for lengths').selectOption('inch')
  // 57 / 25.4 = 2.24409; 3.2 / 25.4 = 0.12598.
  await expect(size).toContainText('2.244 × 0.126')
  await kept
  await app.reload()
  await expect(app.getByLabel('Unit for lengths')).toHaveValue('inch')
  await app.getByLabel('Unit for lengths').selectOption('thou')
  // 57 / 0.0254 = 2244.09.
  await expect(size).toContainText('2244 × 126')
  await size.click()
  await app.getByRole('link', { name: 'Plan' }).click()
  // 0.5 / 0.0254 = 19.69: cautions speak in the unit chosen, too.
  await expect(app.getByRole('list', { name: 'Cautions' })).toContainText(/19\.7\sthou is wanted/, { timeout: 30_000 })
})

test('light and dark can be chosen against the system', async ({ app }) => {
  const ground = () => app.evaluate(() => getComputedStyle(document.body).backgroundColor)
  await expect.poll(ground).toBe('rgb(228, 232, 229)')
  await app.getByLabel('Light or dark').selectOption('dark')
  await expect.poll(ground).toBe('rgb(16, 22, 24)')
  await app.emulateMedia({ colorScheme: 'dark' })
  await app.getByLabel('Light or dark').selectOption('light')
  await expect.poll(ground).toBe('rgb(228, 232, 229)')
  await app.getByLabel('Light or dark').selectOption('system')
  await expect.poll(ground).toBe('rgb(16, 22, 24)')
})

test('the first stop of the Tab key leads past the header', async ({ app }) => {
  await expect(app.getByRole('grid')).toBeVisible()
  await app.keyboard.press('Tab')
  await expect(app.getByRole('button', { name: 'Go to the work' })).toBeFocused()
  await app.keyboard.press('Enter')
  await expect(app.locator('main')).toBeFocused()
})

test('the job card is made from any screen and kept as a PDF file; without a tool it says what is missing', async ({
  app,
}) => {
  await app.getByRole('button', { name: 'Job card' }).click()
  await expect(app.getByTestId('status')).toContainText('Choose a tool from the rack first')
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  const download = app.waitForEvent('download')
  await app.getByRole('button', { name: 'Job card' }).click()
  expect((await download).suggestedFilename()).toMatch(/\.pdf$/)
  await expect(app.getByTestId('status')).toContainText('The job card is made')
  const dragged = await draggedFile(app.getByRole('link', { name: /^Drag it out/ }))
  expect(dragged).toEqual({ fileName: (await download).suggestedFilename(), beginning: '%PDF-' })
})

/** What a drag that begins on something brings along, as whoever it is dropped on would fetch it. */
const draggedFile = (link: Locator) =>
  link.evaluate(async (element) => {
    const dataTransfer = new DataTransfer()
    element.dispatchEvent(new DragEvent('dragstart', { bubbles: true, dataTransfer }))
    const [, fileName, address] = /^[^:]+:([^:]+):(http.+|[a-z]+:.+)$/.exec(dataTransfer.getData('DownloadURL')) ?? []
    const response = await fetch(address ?? '')
    return { fileName, beginning: (await response.text()).slice(0, 5) }
  })

const smallWindows = [
  { name: '640 pixels wide', width: 640, height: 900 },
  { name: '1280 x 800 at 200 %', width: 640, height: 400 },
  { name: '320 pixels wide, 1280 at 400 %', width: 320, height: 640 },
]

test('small windows: screens stack and nothing is cut off at the side', async ({ app }) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  for (const { name, width, height } of smallWindows) {
    await test.step(name, async () => {
      await app.setViewportSize({ width, height })
      for (const screen of ['Rack', 'Plan', 'Set up', 'Grind']) {
        const link = app.getByRole('link', { name: screen, exact: true })
        await link.click()
        await expect(link).toHaveAttribute('aria-current', 'page')
        await expect(app.locator('.rack, .answer, .set-up-foot, .grind-screen').first()).toBeVisible()
        const wide = () => app.evaluate(() => document.documentElement.scrollWidth)
        await expect.poll(wide).toBeLessThanOrEqual(width)
        await expect(app.getByRole('button', { name: 'Undo', exact: true })).toBeVisible()
      }
    })
  }
})

test('nothing in hand looks right in light and dark', async ({ app }) => {
  await app.getByRole('link', { name: 'Plan' }).click()
  await expect(app.getByText('No iron is in hand yet.')).toBeVisible()
  await expectGoodLooks(app, 'plan-empty')
})

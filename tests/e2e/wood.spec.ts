import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, test } from '../support/app.ts'

/** A report takes a second or two on a slow machine. */
const SOLVED = { timeout: 30_000 }

const woodView = async (app: Page, tool: RegExp): Promise<void> => {
  await app.getByRole('row', { name: tool }).click()
  await app.getByRole('button', { name: 'Plan this iron' }).click()
  await app.getByRole('link', { name: 'Wood view' }).click()
}

const use = (app: Page, name: string) => app.getByRole('region', { name })

const type = async (app: Page, name: string, text: string): Promise<void> => {
  await app.getByLabel(name, { exact: true }).fill(text)
  await app.getByLabel(name, { exact: true }).press('Enter')
}

test('shaving, lever, passes, joint and skew of a smoothing iron follow what is typed and what is drawn', async ({
  app,
}) => {
  await woodView(app, /Smoothing iron, fine/)
  const section = app.getByRole('img', { name: /Section across the wood/ })
  await expect(section).toBeVisible(SOLVED)
  // 0.07 mm of relief on 50 mm at a 45 degree seat: 0.0495 mm of camber, cut 0.03 deep over 50 sqrt(0.03 / 0.0495) = 38.9 mm.
  await expect(use(app, 'The shaving')).toContainText(/38\.9\smm wide, 0\.03\smm at its thickest/)
  await expect(use(app, 'Side by side')).toContainText('the corners stay clear')
  await type(app, 'set this deep', '0.08')
  // 0.08 - 0.0495
  await expect(use(app, 'Side by side')).toContainText(
    /no pass has touched, both corners dig in and leave steps 0\.03\smm high/,
  )
  await type(app, 'width of the board', '40')
  await expect(use(app, 'Side by side')).toContainText('on this board the corners stay clear all the same')
  await type(app, 'from pass to pass', '25')
  // A quarter of 0.0495.
  await expect(use(app, 'Side by side')).toContainText(/Ridges 0\.012\smm high/)
  // r = 25^2 / (2 x 0.07) = 4,464 mm, x tan 0.1 = 7.8 mm.
  await type(app, 'lateral lever', '0.1')
  await expect(use(app, 'The shaving')).toContainText(/thickest 7\.\d\smm to the left/)
  await type(app, 'plane held askew', '45')
  await expect(use(app, 'The shaving')).toContainText(/pitch of 35\.3°/)
  await type(app, 'plane moved aside', '5')
  await expect(use(app, 'An edge for a joint')).toContainText(/off square, less on the/)
})

test('a straight edge is said to cut as thick all across, and what Plan said last stays on Plan', async ({ app }) => {
  await app.getByRole('row', { name: /Smoothing iron, fine/ }).click()
  await app.getByRole('button', { name: 'Plan this iron' }).click()
  await app.getByRole('radio', { name: 'dead square' }).check()
  await expect(app.getByTestId('status')).toContainText('is changed', SOLVED)
  await app.getByRole('link', { name: 'Wood view' }).click()
  await expect(app.getByTestId('status')).toBeEmpty()
  await app.getByRole('radio', { name: /wanted/ }).check()
  await expect(use(app, 'The shaving')).toContainText('as thick all across', SOLVED)
})

test('@long the edge is pulled deeper and turned by its rings, and a chisel has no wood view', async ({ app }) => {
  await woodView(app, /Low-angle jack iron 57/)
  const grips = app.locator('.wood-grip')
  await expect(grips).toHaveCount(2, SOLVED)
  const pull = async (which: number, dyPx: number) => {
    const box = await grips.nth(which).boundingBox()
    if (!box) throw new Error('no ring')
    await app.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await app.mouse.down()
    await app.mouse.move(box.x + box.width / 2, box.y + box.height / 2 + dyPx, { steps: 3 })
    await app.mouse.up()
  }
  const value = (name: string) => app.getByLabel(name, { exact: true }).inputValue().then(Number.parseFloat)
  const before = await value('set this deep')
  await pull(0, 20)
  await expect.poll(() => value('set this deep')).toBeGreaterThan(before)
  await pull(1, -30)
  await expect.poll(() => value('lateral lever')).toBeGreaterThan(0)
  await type(app, 'lateral lever', '0')
  await type(app, 'from pass to pass', '20')
  await expectGoodLooks(app, 'wood')
  await app.getByRole('link', { name: 'Rack', exact: true }).click()
  await woodView(app, /Chisel 12/)
  await expect(app.getByText('This tool has no bed')).toBeVisible(SOLVED)
})

import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, takePicture, test } from '../support/app.ts'

/** A report takes a second or two on a slow machine. */
const SOLVED = { timeout: 30_000 }

/** Readings of the low-angle jack iron in the demo workshop. */
const DEMO_LINES = 5

const shown = (app: Page) => app.getByRole('region', { name: 'What the reading shows' })
const log = (app: Page) => app.getByRole('region', { name: 'Bench log' })
const lines = (app: Page) => log(app).getByRole('listitem')
const field = (app: Page, name: string) => app.getByLabel(name, { exact: true })

/** From the rack to the Measure screen of a tool. */
const measure = async (app: Page, tool: RegExp): Promise<void> => {
  await app.getByRole('row', { name: tool }).click()
  await app.getByRole('link', { name: 'Measure this iron' }).click()
  await expect(shown(app)).toBeVisible()
}

const type = async (app: Page, leaves: Readonly<Record<string, string>>): Promise<void> => {
  for (const [name, leaf] of Object.entries(leaves)) {
    await field(app, name).fill(leaf)
    await field(app, name).press('Tab')
  }
}

test('leaves show the edge over wanted and predicted, one key keeps it, undo takes it out', async ({ app }) => {
  await measure(app, /Low-angle jack iron 57/)
  await expect(shown(app)).toContainText(/Last measured as found, 24 Nov.* Both corners lie 0.02/)
  await expect(lines(app)).toHaveCount(DEMO_LINES)
  await field(app, 'ground').check()
  await type(app, { 'left corner': '20 thou', 'halfway, if taken': '0,12', 'right corner': '0.5' })
  // 28.5^2 / (2 x 0.504) + 0.504 / 2 = 806 for the mean of 0.508 and 0.5; known to 6 %, so two digits.
  await expect(shown(app)).toContainText(/810\smm/)
  await expect(shown(app)).toContainText('an arc')
  await expect(shown(app)).toContainText('as wanted, as far as this reading tells')
  await expect(app.getByRole('img', { name: /Wanted relief 0.50.*Predicted 0.24.*Measured 0.50/ })).toBeVisible(SOLVED)
  await app.getByRole('button', { name: 'Keep it as ground' }).press('Enter')
  await expect(lines(app).first()).toContainText(/ground 0.51 \| 0.12 \| 0.50\smm.*relief 0.50\smm, an arc/)
  await expect(lines(app)).toHaveCount(DEMO_LINES + 1)
  await expect(field(app, 'left corner')).toHaveValue('')
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(lines(app)).toHaveCount(DEMO_LINES)
})

test('as last time is one touch and one key; a line taken out comes back by undo', async ({ app }) => {
  await measure(app, /Shooting iron/)
  await expect(log(app)).toContainText('Nothing is measured yet.')
  await app.getByRole('button', { name: 'As on the card' }).click()
  await expect(field(app, 'left corner')).toHaveValue('0.00')
  await app.getByRole('button', { name: 'Keep it as found' }).click()
  await expect(lines(app)).toHaveCount(1)
  await app.getByRole('button', { name: 'As last time' }).click()
  await app.getByRole('button', { name: 'Keep it as ground' }).click()
  await expect(lines(app)).toHaveCount(2)
  await expect(lines(app).first()).toContainText(/ground 0.00 \| 0.0\d \| 0.00\smm.*straight/)
  await app.getByRole('button', { name: /Take out the reading of .* ground/ }).click()
  await expect(lines(app)).toHaveCount(1)
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(lines(app)).toHaveCount(2)
})

test('a reading that another window takes out leaves this one as well', async ({ app }) => {
  await measure(app, /Low-angle jack iron 57/)
  await expect(lines(app)).toHaveCount(DEMO_LINES)
  const other = await app.context().newPage()
  await other.goto(app.url())
  await expect(lines(other)).toHaveCount(DEMO_LINES)
  await log(other).getByRole('button').first().click()
  await expect(lines(other)).toHaveCount(DEMO_LINES - 1)
  await expect(lines(app)).toHaveCount(DEMO_LINES - 1)
})

test('unequal and contradicting leaves are said plainly, and nothing is kept unasked', async ({ app }) => {
  await measure(app, /Low-angle jack iron 57/)
  await expect(lines(app)).toHaveCount(DEMO_LINES)
  await type(app, { 'left corner': '0', 'right corner': '2' })
  await expect(shown(app)).toContainText('The straightedge rested on a corner')
  await expect(app.getByRole('img', { name: /as it lay by the leaves: 0.00\smm left, 2.00\smm right/ })).toBeVisible()
  await expect(app.getByRole('button', { name: 'Keep the unequal leaves as found' })).toBeVisible()
  await takePicture(app, 'measure-askew')
  await type(app, { 'left corner': '0.1', 'right corner': '0.1', 'halfway, if taken': '0.5' })
  await expect(field(app, 'halfway, if taken')).toHaveAccessibleDescription(/Halfway out a thicker leaf passes/)
  await app.getByRole('button', { name: 'Keep it as found' }).click()
  await expect(field(app, 'halfway, if taken')).toBeFocused()
  await field(app, 'right corner').fill('')
  await field(app, 'halfway, if taken').fill('')
  await app.getByRole('button', { name: 'Keep it as found' }).click()
  await expect(field(app, 'right corner')).toBeFocused()
  await expect(field(app, 'right corner')).toHaveAccessibleDescription(/This is missing/)
  await expect(lines(app)).toHaveCount(DEMO_LINES)
})

test('looks right in light and dark, and in a narrow window; what is typed stays while other screens are looked at', async ({
  app,
}) => {
  await measure(app, /Low-angle jack iron 57/)
  await type(app, { 'left corner': '0.5', 'halfway, if taken': '0.2', 'right corner': '0.5' })
  await expect(app.getByRole('img', { name: /Predicted/ })).toBeVisible(SOLVED)
  await expectGoodLooks(app, 'measure')
  await app.getByRole('link', { name: 'Grind' }).click()
  await app.getByRole('link', { name: 'Measure' }).click()
  await expect(field(app, 'halfway, if taken')).toHaveValue('0.20')
  await app.setViewportSize({ width: 320, height: 800 })
  await takePicture(app, 'measure-narrow')
  expect(await app.evaluate(() => document.documentElement.scrollWidth)).toBe(320)
})

test('points, shavings and a file of points show the edge too; what cannot be one is refused with its line', async ({
  app,
}) => {
  await measure(app, /Low-angle jack iron 57/)
  await field(app, 'points across').check()
  for (const [row, [place, gap]] of [
    ['-28', '0.58'],
    ['-14', '0.18'],
    ['0', '0'],
    ['14', '0.06'],
    ['28', '0,36'],
  ].entries())
    await type(app, { [`place ${row + 1}`]: place as string, [`gap ${row + 1}`]: gap as string })
  await expect(shown(app)).toContainText(/Both corners lie 0\.49\smm behind the middle/)
  await expect(shown(app)).toContainText('an arc')
  await expectGoodLooks(app, 'measure-points')
  await field(app, 'three shavings').check()
  await type(app, { 'shaving at the left': '0.05', 'in the middle': '0.09', 'at the right': '0.05' })
  // 0.04 / (23 / 28.5)^2 / sin 12 = 0.295
  await expect(shown(app)).toContainText(/Both corners lie 0\.30\smm behind/)
  await takePicture(app, 'measure-shavings')
  await field(app, 'a profile').check()
  const pick = (text: string) =>
    app
      .locator('input[type=file]')
      .first()
      .setInputFiles({ name: 'gauge.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
  await pick('u;gap\n-20;0.2\n0;\n20;0.2')
  await expect(app.getByRole('alert')).toContainText('gauge.csv: Line 3 reads “0;”, which is not two figures')
  await pick('u;gap\n-28;0.50\n-14;0.13\n0;0,00\n14;0.12\n28;0.51')
  await app.getByRole('button', { name: 'Take this profile' }).click()
  await expect(shown(app)).toContainText(/Both corners lie 0\.5\d\smm behind/)
  await app.getByRole('button', { name: /Keep it as/ }).click()
  await expect(lines(app).first()).toContainText('profile of 5 points')
  await expect(lines(app)).toHaveCount(DEMO_LINES + 1)
  await app.getByRole('button', { name: 'As last time' }).click()
  await expect(shown(app)).toContainText(/^Both corners lie 0\.5\d\smm behind/)
})

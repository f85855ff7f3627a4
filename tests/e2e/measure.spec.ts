import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, takePicture, test } from '../support/app.ts'

/** A report takes a second or two on a slow machine. */
const SOLVED = { timeout: 30_000 }

/** Readings of the low-angle jack iron in the demo workshop. */
const DEMO_LINES = 5

const shown = (app: Page) => app.getByRole('region', { name: 'What the leaves show' })
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
  await expect(shown(app)).toContainText('as wanted, as far as these leaves tell')
  await expect(app.getByRole('img', { name: /Wanted relief 0.50.*Predicted 0.23.*Measured 0.50/ })).toBeVisible(SOLVED)
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

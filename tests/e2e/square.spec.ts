import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, test } from '../support/app.ts'

/** A report takes a second or two on a slow machine. */
const SOLVED = { timeout: 30_000 }

const type = async (app: Page, name: string, text: string): Promise<void> => {
  await app.getByLabel(name, { exact: true }).fill(text)
  await app.getByLabel(name, { exact: true }).press('Enter')
}
const causes = (app: Page) => app.getByRole('region', { name: 'What may have made it so' })
const correct = (app: Page) => app.getByRole('region', { name: 'Put it right' })

test('a square finds the edge askew, a second clamping tells why, the stops put it right, each with its undo', async ({
  app,
}) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('link', { name: 'Set up' }).click()
  await app.getByRole('link', { name: 'Squareness' }).click()
  await type(app, 'gap under the square', '0.2')
  await app.getByRole('button', { name: 'Take this reading' }).click()
  // atan(0.2 / 50)
  await expect(causes(app)).toContainText('The right corner lies back: 0.23° out of square')
  await expect(causes(app)).toContainText('These readings cannot tell apart')
  await type(app, 'clamping', '2')
  await type(app, 'gap under the square', '0')
  await app.getByRole('button', { name: 'Take this reading' }).click()
  await expect(causes(app).getByRole('listitem').first()).toContainText('the iron in its clamp')
  await expect(causes(app)).toContainText('The edge is square, as far as a square tells')
  await app.getByRole('button', { name: 'Take out reading 2' }).click()
  await expectGoodLooks(app, 'square')
  // 2 x 75 x tan 0.229 = 0.6 mm, 0.3 / 0.8 = 0.375 turns each: 1.4 and 0.6, to a twentieth.
  await expect(correct(app)).toContainText(/1\.4\sturns left and 0\.65\sturn right, 0\.60\smm of free play/, SOLVED)
  await correct(app).getByRole('button', { name: 'Set the stops so' }).click()
  await app.getByRole('button', { name: 'Undo this' }).click()
  await causes(app)
    .getByRole('button', { name: /Reckon with it: the bar, higher/ })
    .click()
  await expect(causes(app)).toContainText('Plan and model reckon with an error of this set-up.')
  await causes(app).getByRole('button', { name: 'Take the set-up as true again' }).click()
  await expect(causes(app)).not.toContainText('Plan and model reckon')
})

import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, takePicture, test } from '../support/app.ts'

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
  // A screen's drawing has its colours though no other was open before.
  await expect(app.locator('.square-iron')).not.toHaveCSS('fill', 'rgb(0, 0, 0)')
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
  // What the reading foretells for the stops as they are now: nothing more to set.
  await expect(correct(app)).toContainText('The stops of this job are set so.')
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(correct(app).getByRole('button', { name: 'Set the stops so' })).toBeVisible()
  await causes(app)
    .getByRole('button', { name: /Reckon with it: the bar, higher/ })
    .click()
  await expect(causes(app)).toContainText('Plan and model reckon with an error of this set-up.')
  await causes(app).getByRole('button', { name: 'Take the set-up as true again' }).click()
  await expect(causes(app)).not.toContainText('Plan and model reckon')
})

test('both sides show the taper, a dressed wheel leaves clamp and stops, and the bench log gives its readings back', async ({
  app,
}) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('link', { name: 'Set up' }).click()
  await app.getByRole('link', { name: 'Squareness' }).click()
  await type(app, 'gap under the square', '0.3')
  await type(app, 'gap from the other side', '0.1')
  await app.getByRole('button', { name: 'Take it, and keep it in the bench log' }).click()
  await expect(causes(app)).toContainText('The right corner lies back: 0.23° out of square, known to 0.02°')
  await expect(causes(app)).toContainText('the iron widens by 0.40 mm over 100 mm towards its edge')
  await expect(causes(app).getByRole('listitem').filter({ hasText: 'grind and measure again' })).toBeVisible()
  await takePicture(app, 'square-sides')
  await app.getByLabel('Wheel dressed along the bar as it stands').check()
  await type(app, 'gap under the square', '0.2')
  await app.getByRole('button', { name: 'Take this reading' }).click()
  await expect(causes(app).getByRole('listitem').first()).toContainText(/the iron in its clamp|the stops/)
  await takePicture(app, 'square-wide')
  await app.setViewportSize({ width: 900, height: 900 })
  await takePicture(app, 'square-narrow')
  await app.getByRole('button', { name: 'Take out reading 1' }).click()
  await expect(causes(app)).toContainText('The bench log keeps 1 earlier reading of this iron')
  await takePicture(app, 'square-earlier')
  await app.getByRole('button', { name: 'Take it into the list' }).click()
  await expect(causes(app)).toContainText('0.20 mm over 50 mm: 0.23°, bevel 25°, clamping 1')
  await expect(causes(app)).toContainText('clamping 2')
  await expect(causes(app)).not.toContainText('The bench log keeps')
})

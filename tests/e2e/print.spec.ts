import { expect, expectAxeClean, takePicture, test } from '../support/app.ts'

/** A4 on its side, in points of 1/72 inch. */
const A4_POINTS = [842, 595]

test('the job card is printed alone, on one page, and nothing of it stays on the screen', async ({ app }) => {
  // The printer's box is the system's; what it would print is looked at instead.
  await app.evaluate(() => {
    window.print = () => document.body.setAttribute('data-printed', 'yes')
  })
  await app.keyboard.press('Control+p')
  await expect(app.getByTestId('status')).toContainText('Choose a tool from the rack first')
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.keyboard.press('Control+p')
  await expect(app.locator('body[data-printed]')).toBeAttached({ timeout: 30_000 })
  await expect(app.getByRole('grid')).toBeVisible()
  await app.emulateMedia({ media: 'print' })
  await expect(app.getByRole('grid')).toBeHidden()
  await expect(app.locator('.print-sheet svg')).toContainText('Low-angle jack iron')
  await takePicture(app, 'card-printed')
  await app.emulateMedia({ media: 'screen' })
  // Printing ends by itself here, and takes the sheet away.
  const pdf = (await app.pdf({ preferCSSPageSize: true })).toString('latin1')
  const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)]
  expect(boxes.map(([, width, height]) => [Math.round(Number(width)), Math.round(Number(height))])).toEqual([A4_POINTS])
  await expect(app.locator('.print-sheet')).toHaveCount(0)
  await expectAxeClean(app)
})

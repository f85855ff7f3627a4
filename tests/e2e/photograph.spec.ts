import type { Page } from '@playwright/test'
import { expect, expectAxeClean, takePicture, test } from '../support/app.ts'

/** A picture of 4,000 x 3,000 pixels, dark iron before light: its edge an arc of 0.5 mm on 57 mm between x 500 and 3,500. */
const photograph = (app: Page): Promise<Buffer> =>
  app
    .evaluate(async () => {
      const canvas = new OffscreenCanvas(4000, 3000)
      const paper = canvas.getContext('2d')
      if (!paper) throw new Error('no canvas')
      paper.fillStyle = '#d8d8d0'
      paper.fillRect(0, 0, 4000, 3000)
      paper.fillStyle = '#2a2c2e'
      paper.beginPath()
      paper.moveTo(500, 3000)
      for (let x = 500; x <= 3500; x += 10) {
        const share = (x - 500) / 3000
        paper.lineTo(x, 1650 - (4 * 0.5 * share * (1 - share) * 3000) / 57)
      }
      paper.lineTo(3500, 3000)
      paper.fill()
      const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 })
      return [...new Uint8Array(await blob.arrayBuffer())]
    })
    .then((bytes) => Buffer.from(bytes))

test('@long an edge is traced on a photograph of 12 megapixels, looked at, and taken', async ({ app }) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('link', { name: 'Measure this iron' }).click()
  await app.getByLabel('a profile', { exact: true }).check()
  const pick = (name: string, mimeType: string, buffer: Buffer) =>
    app.locator('input[type=file]').nth(1).setInputFiles({ name, mimeType, buffer })
  await pick('edge.jpg', 'image/jpeg', Buffer.from('no picture'))
  await expect(app.getByRole('alert')).toContainText('The file is no picture that can be read here')
  await pick('edge.jpg', 'image/jpeg', await photograph(app))
  const sheet = app.getByRole('dialog', { name: 'Trace the edge on edge.jpg' })
  await expect(sheet).toBeVisible()
  // The marks stand at 600 and 3,400 of 4,000, y 1,650: a hundred pixels within the corners.
  await sheet.getByRole('button', { name: /^Left corner, at 600, 1650/ }).focus()
  for (let k = 0; k < 10; k++) await app.keyboard.press('Shift+ArrowLeft')
  await sheet.getByRole('button', { name: /^Right corner, at 3400, 1650/ }).focus()
  for (let k = 0; k < 10; k++) await app.keyboard.press('Shift+ArrowRight')
  const started = Date.now()
  await sheet.getByRole('button', { name: 'Find the edge' }).click()
  await expect(sheet.getByRole('status')).toContainText(/lowest lies 0\.(49|5\d?)\smm behind/)
  test.info().annotations.push({ type: 'traced in ms', description: String(Date.now() - started) })
  await takePicture(app, 'photograph')
  await expectAxeClean(app)
  await sheet.getByRole('button', { name: 'Take this profile' }).click()
  await expect(app.getByRole('region', { name: 'What the reading shows' })).toContainText(
    /Both corners lie 0\.(49|5\d?)\smm/,
  )
})

import { expect, expectAxeClean, test } from '../support/app.ts'

/** Two pixels beside one another. */
const PICTURE = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAIAAAABCAIAAAB7QOjdAAAADUlEQVR4nGM4IQAEJwAGXwHRqO9+VAAAAABJRU5ErkJggg==',
  'base64',
)

test('@long a tool has a maker, a field of the workshop’s own and a second curve, which becomes the one it is ground to', async ({
  app,
}) => {
  const sheet = app.getByRole('dialog')
  const detail = app.getByRole('complementary', { name: 'Tool in hand' })
  await app.getByRole('button', { name: 'Add a field' }).click()
  await sheet.getByLabel('Name').fill('Set hammer')
  await sheet.getByLabel('Kind').selectOption({ label: 'one of several' })
  await sheet.getByLabel('Choices, one a line').fill('brass\n\n wood ')
  await sheet.getByRole('button', { name: 'Save' }).click()
  await expect(sheet).toBeHidden()

  await app.getByRole('row', { name: /Fore iron/ }).click()
  await detail.getByRole('button', { name: 'Edit', exact: true }).click()
  await sheet.getByLabel('Maker').fill('Forge at Nether Loom')
  await sheet.getByLabel('Set hammer').selectOption({ label: 'wood' })
  await sheet.getByLabel('For what else is it ground?').fill('flattening')
  await sheet.getByRole('button', { name: 'Add this purpose' }).click()
  const curve = sheet.getByRole('listitem').filter({ hasText: 'flattening' })
  await curve.getByRole('spinbutton', { name: /relief/ }).fill('0.4')
  await expectAxeClean(app)
  await sheet.getByRole('button', { name: 'Save' }).click()
  await expect(sheet).toBeHidden()
  await expect(detail).toContainText('Forge at Nether Loom')
  await expect(detail).toContainText('Set hammerwood')
  await expect(detail).toContainText('flattening: relief 0.40 mm')

  await detail.getByRole('button', { name: 'Grind to the curve for flattening' }).click()
  await expect(detail).toContainText('in use')
  await expect(app.getByRole('row', { name: /Fore iron/ })).toContainText('0.40')
  await app.getByRole('searchbox').fill('nether')
  await expect(app.locator('tbody tr')).toHaveCount(1)

  await detail.getByLabel('Add a picture').setInputFiles({ name: 'iron.png', mimeType: 'image/png', buffer: PICTURE })
  const picture = detail.getByRole('img', { name: 'Picture 1 of 1' })
  await expect(picture).toHaveJSProperty('naturalWidth', 2)
  await detail.getByRole('button', { name: 'Picture 1 of 1' }).click()
  await sheet.getByLabel('What it shows').fill('As found')
  await expectAxeClean(app)
  await sheet.getByRole('button', { name: 'Save' }).click()
  await expect(detail.getByRole('img', { name: 'As found' })).toBeVisible()
  await detail
    .getByLabel('Add a picture')
    .setInputFiles({ name: 'iron.png', mimeType: 'image/png', buffer: Buffer.from('no picture') })
  await expect(detail).toContainText('The file is no picture that can be read here.')
})

import { expect, expectAxeClean, test } from '../support/app.ts'

test('@long a wheel is dressed: its log says so with the bar as it stood, and the station has the new wheel', async ({
  app,
}) => {
  const stations = app.getByRole('region', { name: 'Stations' })
  const sheet = app.getByRole('dialog')
  await stations.getByRole('button', { name: /Slow wet wheel/ }).click()
  await sheet.getByLabel(/least wheel of the machine/).fill('200')
  await sheet.getByRole('button', { name: 'Save' }).click()
  await expect(sheet).toBeHidden()
  await stations.getByRole('button', { name: /Slow wet wheel/ }).click()
  await sheet.getByRole('button', { name: 'Dressings and wear' }).click()
  for (const diameter of ['246', '241']) {
    await sheet.getByLabel('diameter afterwards').fill(diameter)
    await sheet.getByLabel(/bar as it stood/).fill('71.5')
    await sheet.getByLabel('Who did it').fill('Wren Oddly')
    await sheet.getByRole('button', { name: 'Note it' }).click()
    await expect(sheet.getByRole('listitem').first()).toContainText(`dressed to ${diameter}.0 mm (bar 71.5 mm`)
  }
  await expect(sheet).toContainText('41.0 mm are left')
  await expect(sheet.getByRole('img', { name: /From 246.0 mm/ })).toBeVisible()
  await expectAxeClean(app)
  await sheet.getByRole('button', { name: 'Close' }).click()
  await expect(stations).toContainText('wheel 241.0 mm')
})

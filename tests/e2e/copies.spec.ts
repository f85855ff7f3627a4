import { expect, expectGoodLooks, test } from '../support/app.ts'

test('a copy is made, looked into and gone back to, and there is a way back', async ({ app }) => {
  const rows = app.getByRole('row', { name: /low-angle jack/i })
  const copies = app.getByRole('button', { name: 'Copies of the data' })
  await expect(rows.first()).toBeVisible()
  const many = await app.getByRole('row').count()
  await copies.click()
  await app.getByRole('button', { name: 'Make one now' }).click()
  await app.getByRole('button', { name: 'Close' }).click()

  await rows.first().click()
  await app.getByRole('button', { name: 'Delete' }).click()
  await expect(app.getByRole('row')).toHaveCount(many - 1)

  await copies.click()
  await app
    .getByRole('button', { name: /^Look inside the copy/ })
    .first()
    .click()
  await expect(app.getByText(/^\d+ tools, \d+ lines in the bench log/)).toBeVisible()
  await expectGoodLooks(app, 'rack-copies')
  await app.getByRole('button', { name: 'Go back to this copy' }).click()
  await expect(app.getByText(/^Gone back to the copy of/)).toBeVisible()
  await expect(app.getByRole('row')).toHaveCount(many)
  await copies.click()
  await expect(app.getByText('as it was before going back')).toBeVisible()
})

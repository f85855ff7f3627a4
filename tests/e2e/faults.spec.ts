import { expect, expectGoodLooks, test } from '../support/app.ts'

/** A report takes a second or two on a slow machine. */
const SOLVED = { timeout: 30_000 }

test('@long what is seen leads to causes in order, the likeliest is shown on the model, and the job stays as it was', async ({
  app,
}) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('link', { name: 'Measure this iron' }).click()
  await app.getByRole('link', { name: 'What went wrong' }).click()
  const causes = app.getByRole('region', { name: 'What may have made it so' })
  await expect(causes).toContainText('Tick what is seen', SOLVED)
  await app.getByLabel('ink gone at the heel').check()
  await expect(causes.getByRole('listitem').first()).toContainText('Set up too keen', SOLVED)
  await app.getByLabel('ink gone at the heel').uncheck()
  await app.getByLabel('right corner too far back').check()
  await expect(causes.getByRole('listitem').first()).toContainText('found by grinding this job so', SOLVED)
  await expect(causes).toContainText('Bar not level: the right corner let down')
  await expectGoodLooks(app, 'faults')
  await causes.getByRole('button', { name: /Show it on the model: Bar not level: the right/ }).click()
  await expect(app.getByText('This shows a fault: Bar not level: the right corner let down.')).toBeVisible(SOLVED)
  await app.getByRole('button', { name: 'Back to the job' }).click()
  await expect(app.getByText('This shows a fault')).toBeHidden()
})

import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, test } from '../support/app.ts'

/** A report takes a second or two on a slow machine. */
const SOLVED = { timeout: 30_000 }

const said = (app: Page) => app.getByRole('region', { name: 'What the fixture has learnt' })
const rows = (app: Page) => app.getByRole('table', { name: 'Measured grinds' }).getByRole('row')

test('a fixture shows what it has learnt and from what; a grind is left out, the whole switched off, each with its undo', async ({
  app,
}) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('link', { name: 'Measure this iron' }).click()
  await app.getByRole('link', { name: 'What was learnt' }).click()
  await expect(said(app)).toContainText(/This fixture (gives|grinds) .* at 0\.80\smm of free play/, SOLVED)
  await expect(app.getByRole('figure').getByText(/^lash 0\.\d\d\smm$/)).toBeVisible()
  await expect(rows(app)).toHaveCount(7)
  await expect(app.getByRole('row', { name: /9 Sept/ })).toContainText('far from the others, not used')
  await expectGoodLooks(app, 'learnt')
  for (const day of ['12 Nov', '30 Oct', '19 Nov'])
    await app
      .getByRole('row', { name: new RegExp(day) })
      .getByRole('button', { name: 'Leave out' })
      .click()
  await expect(said(app)).toContainText('Too few grinds yet (2 of 3)')
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(said(app)).toContainText(/This fixture (gives|grinds)/)
  await app.getByRole('radio', { name: 'no', exact: true }).check()
  await expect(said(app)).toContainText('It is switched off')
  await app.getByRole('button', { name: 'Use it in this job' }).click()
  await expect(app.getByText('The job says the same.')).toBeVisible(SOLVED)
})

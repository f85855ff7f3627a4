import type { Page } from '@playwright/test'
import { expect, expectAxeClean, test } from '../support/app.ts'

const row = (app: Page) => app.getByRole('row', { name: /Fore iron/ })
const keys = (app: Page) => app.getByRole('region', { name: 'Noted in one touch' })

test('a tool is lent, narrowed down to, given back, and honed in one touch each', async ({ app }) => {
  await row(app).click()
  await keys(app).getByRole('button', { name: 'Lend', exact: true }).click()
  const sheet = app.getByRole('dialog')
  await sheet.getByLabel('To whom').fill('Wren Oddly')
  await sheet.getByLabel(/Wanted back by/).fill('2020-01-31')
  await expectAxeClean(app)
  await sheet.getByRole('button', { name: 'Lend it' }).click()
  await expect(sheet).toBeHidden()
  await expect(row(app)).toContainText('Wren Oddly')
  await expect(row(app)).toContainText('was due back 31 Jan 2020')
  await app.getByRole('button', { name: /^overdue/ }).click()
  await expect(app.locator('tbody tr')).toHaveCount(1)
  await keys(app).getByRole('button', { name: 'Back from Wren Oddly' }).click()
  await expect(app.getByText('No tool matches')).toBeVisible()
  await app.getByRole('button', { name: /^all/ }).click()
  await keys(app).getByRole('button', { name: 'Honed' }).click()
  await expect(keys(app)).toContainText('Honed once since the last grind.')
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(keys(app)).not.toContainText('Honed once')

  await app
    .getByRole('region', { name: 'People' })
    .getByRole('button', { name: /Wren Oddly/ })
    .click()
  await sheet.getByRole('button', { name: 'Take out for good' }).click()
  await expect(sheet).toContainText('1 loan is kept, without the name.')
  await expectAxeClean(app)
  await sheet.getByRole('button', { name: 'Take out for good' }).click()
  await expect(app.getByRole('status').filter({ hasText: 'stands for one who was taken out' })).toBeVisible()
  await expect(app.getByRole('region', { name: 'People' })).not.toContainText('Wren Oddly')
})

test('a place is made within another, a tool is put there, and it is found by both names', async ({ app }) => {
  const places = app.getByRole('region', { name: 'Places' })
  const sheet = app.getByRole('dialog')
  await places.getByRole('button', { name: 'Add a place' }).click()
  await sheet.getByLabel('Name').fill('Top tray')
  await sheet.getByLabel('Stands in').selectOption({ label: 'tool wall' })
  await sheet.getByRole('button', { name: 'Save' }).click()
  await expect(places).toContainText('tool wall / Top tray')
  await row(app).click()
  await app.getByRole('button', { name: 'Edit', exact: true }).click()
  await sheet.getByLabel('Where it belongs').selectOption({ label: 'tool wall / Top tray' })
  await sheet.getByRole('button', { name: 'Save' }).click()
  await expect(sheet).toBeHidden()
  await app.getByRole('searchbox').fill('wall top')
  await expect(app.locator('tbody tr')).toHaveCount(1)
  await expect(row(app)).toContainText('tool wall / Top tray')
  await places.getByRole('button', { name: /Top tray/ }).click()
  await sheet.getByRole('button', { name: 'Delete' }).click()
  await expect(app.getByRole('status').filter({ hasText: 'This place is not empty' })).toBeVisible()
})

test('the list is sorted by its columns, and a way of looking is kept', async ({ app }) => {
  await app.getByRole('button', { name: 'size' }).click()
  await expect(app.locator('tbody tr').first()).toContainText('Chisel 6')
  await app.getByRole('button', { name: 'size' }).click()
  await expect(app.getByRole('columnheader', { name: 'size' })).toHaveAttribute('aria-sort', 'descending')
  await expect(app.locator('tbody tr').first()).toContainText('Jointer iron')
  await app.getByText('More filters').click()
  await app.getByLabel('Kind', { exact: true }).selectOption({ label: 'chisel' })
  await expect(app.locator('tbody tr')).toHaveCount(5)
  await app.getByLabel('Keep this as').fill('Chisels, widest first')
  await app.getByRole('button', { name: 'Keep', exact: true }).click()
  await app.getByRole('button', { name: 'Ask for everything again' }).click()
  await expect(app.locator('tbody tr')).toHaveCount(24)
  await app.getByRole('button', { name: 'Chisels, widest first', exact: true }).click()
  await expect(app.locator('tbody tr').first()).toContainText('Paring chisel 32')
  await expect(app.locator('tbody tr')).toHaveCount(5)
})

test('what another window measures shows in the list', async ({ app }) => {
  await app.setViewportSize({ width: 1800, height: 900 })
  await expect(row(app)).toContainText('7 Oct 2025')
  await app.evaluate(async () => {
    const call = async (name: string, input: unknown) => {
      const headers = { 'content-type': 'application/json' }
      const body = JSON.stringify({ callId: crypto.randomUUID(), name, input })
      return (await (await fetch('/call', { method: 'POST', headers, body })).json()).value
    }
    const { tools } = await call('tool.find', { search: 'fore iron' })
    await call('benchLog.add', { toolId: tools[0].id, stage: 'asGround', reliefLeftMm: 2, reliefRightMm: 2 })
  })
  await expect(row(app)).not.toContainText('7 Oct 2025')
})

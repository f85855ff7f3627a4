import type { Page } from '@playwright/test'
import { expect, expectAxeClean, expectGoodLooks, test } from '../support/app.ts'

const rows = (app: Page) => app.getByRole('grid').locator('tbody tr')
const status = (app: Page) => app.getByTestId('status')
const find = (app: Page) => app.getByRole('searchbox')

test('every tool of the demo is listed, and typing finds one by name, place or person', async ({ app }) => {
  await expect(rows(app)).toHaveCount(24)
  await expect(app.getByText('24 edge tools.')).toBeVisible()
  await find(app).fill('hanno')
  await expect(rows(app)).toHaveCount(1)
  await expect(rows(app)).toContainText('Block iron, low seat')
  await find(app).fill('jack long bench')
  await expect(rows(app)).toHaveCount(2)
  await find(app).fill('nothing like it')
  await expect(app.getByText('No tool matches.')).toBeVisible()
})

test('a tool is added, changed, deleted, and each can be taken back', { tag: '@window' }, async ({ app }) => {
  await app.getByRole('button', { name: 'Add a tool' }).click()
  const sheet = app.getByRole('dialog')
  await sheet.getByLabel('Name').fill('Trial iron')
  await sheet.getByLabel('width', { exact: true }).fill('2 in')
  await sheet.getByLabel('thickness').fill('3,2')
  await sheet.getByRole('button', { name: 'Put it on the rack' }).click()
  await expect(sheet).toBeHidden()
  await expect(rows(app)).toHaveCount(25)
  const row = app.getByRole('row', { name: /Trial iron/ })
  await expect(row).toContainText('50.8 × 3.2')

  await app.getByRole('button', { name: 'Edit', exact: true }).click()
  await sheet.getByLabel('thickness').fill('4')
  await sheet.getByRole('button', { name: 'Save' }).click()
  await expect(row).toContainText('50.8 × 4.0')
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(row).toContainText('50.8 × 3.2')

  await app.getByRole('button', { name: 'Delete', exact: true }).click()
  await expect(status(app)).toContainText('Trial iron is off the rack.')
  await expect(rows(app)).toHaveCount(24)
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(rows(app)).toHaveCount(25)
  await app.getByRole('button', { name: 'Undo', exact: true }).click()
  await expect(rows(app)).toHaveCount(24)
})

test('what is missing or cannot be read is said at its field, and nothing is saved', async ({ app }) => {
  await app.getByRole('button', { name: 'Add a tool' }).click()
  const sheet = app.getByRole('dialog')
  const width = sheet.getByLabel('width', { exact: true })
  await sheet.getByLabel('Name').fill('Trial iron')
  await width.fill('1,234.5')
  await sheet.getByRole('button', { name: 'Put it on the rack' }).click()
  await expect(width).toHaveAttribute('aria-invalid', 'true')
  await expect(width).toHaveAccessibleDescription(/can be read in two ways/)
  await expect(width).toHaveValue('1,234.5')
  await width.fill('500')
  await width.blur()
  await expect(width).toHaveAccessibleDescription(/too large: 120/)
  await width.fill('50')
  await sheet.getByRole('button', { name: 'Put it on the rack' }).click()
  await expect(sheet.getByLabel('thickness')).toHaveAccessibleDescription(/This is missing/)
  await expect(sheet.getByLabel('thickness')).toBeFocused()
  await app.keyboard.press('Escape')
  await expect(rows(app)).toHaveCount(24)
})

test('arrow keys go through the rack and Enter plans the iron', async ({ app }) => {
  await rows(app).first().focus()
  await app.keyboard.press('ArrowDown')
  await app.keyboard.press('ArrowDown')
  await expect(rows(app).nth(2)).toBeFocused()
  await expect(rows(app).nth(2)).toHaveAttribute('aria-selected', 'true')
  await app.keyboard.press('End')
  await expect(rows(app).last()).toBeFocused()
  await app.keyboard.press('Enter')
  await expect(app.getByRole('link', { name: 'Plan' })).toHaveAttribute('aria-current', 'page')
})

test('a wheel measured again carries today as its date', async ({ app }) => {
  await app.getByRole('button', { name: /S1/ }).click()
  const sheet = app.getByRole('dialog')
  await sheet.getByLabel('wheel diameter today').fill('246.5')
  await sheet.getByRole('button', { name: 'Save' }).click()
  const today = new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'short' })
  await expect(app.getByRole('region', { name: 'Stations' })).toContainText(`wheel 246.5 mm, measured ${today}`)
})

test('a rack of one’s own starts empty, says what to do, and leads back to the demo', async ({ app }) => {
  await app.getByRole('button', { name: 'Start my own rack' }).click()
  await expect(app.getByText('Nothing is on the rack yet.')).toBeVisible()
  await expectAxeClean(app)
  await app.getByRole('button', { name: 'Open the demo workshop' }).click()
  await expect(rows(app)).toHaveCount(24)
})

test('what happened to the data since last time is said on the rack', { tag: '@http' }, async ({ app }) => {
  await app.route('**/call', async (route) => {
    if (route.request().postDataJSON().name !== 'workshop.get') return route.fallback()
    const notices = [{ code: 'rackMovedAside', path: '', params: { file: 'rack-aside.db', backups: 'copies' } }]
    return route.fulfill({ json: { ok: true, value: { rack: 'demo', tools: 24, notices } } })
  })
  await app.reload()
  await expect(app.getByText('The data file was damaged. It was put aside as rack-aside.db')).toBeVisible()
  await app.getByRole('button', { name: 'Go back to a copy' }).click()
  await expect(app.getByRole('dialog', { name: 'Copies of the data' })).toBeVisible()
})

test('looks right in light and dark, with a tool in hand and with its sheet open', async ({ app }) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await expect(app.getByRole('region', { name: 'Bench log' })).toBeVisible()
  await expectGoodLooks(app, 'rack')
  await app.getByRole('button', { name: 'Edit', exact: true }).click()
  await expectGoodLooks(app, 'rack-sheet')
})

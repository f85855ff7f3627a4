import type { Page } from '@playwright/test'
import { expect, expectAxeClean, test } from '../support/app.ts'

/** More than a list that is shown whole, and than is read on the way from its first row to its last. */
const ADDED = 380

const HEAD = 'name,kind,widthMm,thicknessMm,seatAngleDeg,bevelSide,bevelAngleDeg,projectionMm,reliefMm,shavingDepthMm'
const tableOf = (rows: number) =>
  [HEAD, ...Array.from({ length: rows }, (_, i) => `Row ${i + 1} many${i + 1},jack,50,3,45,down,25,120,0.1,0.05`)].join(
    '\n',
  )

/** Brings more irons in, as another window would: one change, taken back as one after the test. */
const bringMany = (app: Page, rows = ADDED): Promise<void> =>
  app.evaluate(async (text) => {
    const post = async (address: string, type: string, body: string) =>
      (await fetch(address, { method: 'POST', headers: { 'content-type': type }, body })).json()
    const { blobId } = await post('/blob', 'application/octet-stream', text)
    const input = { blobId, noun: 'tool' }
    await post('/call', 'application/json', JSON.stringify({ callId: crypto.randomUUID(), name: 'inOut.bring', input }))
  }, tableOf(rows))

test('a long list draws what is in sight, keys reach every row of it, and words narrow it down', async ({ app }) => {
  await bringMany(app)
  const grid = app.getByRole('grid')
  await expect(grid).toHaveAttribute('aria-rowcount', String(24 + ADDED + 1))
  await expect(app.locator('tbody tr[data-row]')).not.toHaveCount(24 + ADDED)
  await expectAxeClean(app)
  await app.locator('tr[data-row="0"]').focus()
  await app.keyboard.press('End')
  await expect(app.locator('tr:focus')).toContainText(`Row ${ADDED}`)
  await app.keyboard.press('PageUp')
  await expect(app.locator('tr:focus')).toContainText(`Row ${ADDED - 15}`)
  await expect(app.getByRole('complementary')).toContainText(`Row ${ADDED - 15}`)
  // Sorted otherwise from far down the list, it begins at its top and is read.
  await app.getByRole('button', { name: 'tool', exact: true }).click()
  await expect(app.locator('tr[data-row="0"]')).toContainText('Bevel-up smoothing iron')
  await expect(app.getByText('Reading…')).toHaveCount(0)
  await app.getByRole('button', { name: 'code', exact: true }).click()
  await expect(app.locator('tr[data-row="0"]')).toContainText('Smoothing iron, fine')
  await app.locator('tr[data-row="0"]').focus()
  await expect(app.locator('tr:focus')).toContainText('Smoothing iron, fine')
  // Rows between the first and the last were never in sight, and are chosen with them.
  await app.keyboard.press('Space')
  await app.keyboard.press('End')
  await app.locator('tr:focus').click({ modifiers: ['Shift'] })
  const bar = app.getByRole('toolbar', { name: 'With the tools chosen' })
  await expect(bar).toContainText(`${24 + ADDED} tools chosen.`)
  await app.keyboard.press('Escape')
  await app.keyboard.press('Home')
  await app.getByRole('searchbox').fill(`many${ADDED}`)
  await expect(app.locator('tbody tr')).toHaveCount(1)
  await expect(app.locator('tbody tr')).toContainText(`Row ${ADDED}`)
})

/** Enough that a change of all of them takes longer than finding the key that stops it. */
const LONG = 4000

test('a change of many tells how far it is; stopped it leaves nothing, and its key can be pressed again', async ({
  app,
}) => {
  await bringMany(app, LONG)
  await app.locator('tr[data-row="0"]').focus()
  await app.keyboard.press('Control+a')
  const bar = app.getByRole('toolbar', { name: 'With the tools chosen' })
  await expect(bar).toContainText('4,024 tools chosen.')
  await bar.getByRole('button', { name: 'Change' }).click()
  const sheet = app.getByRole('dialog')
  await sheet.getByLabel('Set: Steel').check()
  await sheet.getByRole('textbox', { name: 'Steel' }).fill('carbon')
  const change = sheet.getByRole('button', { name: 'Change them' })
  await change.click()
  await expect(sheet.getByRole('status').filter({ hasText: '4,024 tools are being changed.' })).toBeVisible()
  await sheet.getByRole('button', { name: 'Stop' }).press('Enter')
  await expect(sheet).toContainText('The work was stopped before it was done. Nothing was kept.')
  await expect(change).toBeFocused()
  await expectAxeClean(app)
})

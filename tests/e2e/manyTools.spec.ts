import type { Page } from '@playwright/test'
import { expect, expectAxeClean, test } from '../support/app.ts'

/** More than a list that is shown whole. */
const ADDED = 180

/** Puts more irons on the rack, as another window would. */
const addMany = (app: Page): Promise<void> =>
  app.evaluate(async (count) => {
    const call = async (name: string, input: unknown) => {
      const headers = { 'content-type': 'application/json' }
      const body = JSON.stringify({ callId: crypto.randomUUID(), name, input })
      return (await (await fetch('/call', { method: 'POST', headers, body })).json()).value
    }
    const angles = { seatAngleDeg: 45, bevelSide: 'down', bevelAngleDeg: 25, projectionMm: 120 }
    const sizes = { widthMm: 50, thicknessMm: 3, reliefMm: 0.1, shavingDepthMm: 0.05 }
    for (let n = 1; n <= count; n += 1)
      await call('tool.add', { ...angles, ...sizes, name: `Row ${n} many${n}`, kind: 'jack' })
  }, ADDED)

test('a long list draws what is in sight, keys reach every row of it, and words narrow it down', async ({ app }) => {
  await addMany(app)
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
  await app.keyboard.press('Home')
  await expect(app.locator('tr:focus')).toContainText('Smoothing iron, fine')
  await app.getByRole('searchbox').fill(`many${ADDED}`)
  await expect(app.locator('tbody tr')).toHaveCount(1)
  await expect(app.locator('tbody tr')).toContainText(`Row ${ADDED}`)
})

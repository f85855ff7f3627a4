import { readFileSync } from 'node:fs'
import { expect, expectGoodLooks, test } from '../support/app.ts'

const names = /Chisel 6|Smoothing iron, fine|Smoothing iron, wide|Fore iron/

test('a day’s irons are put on the queue, ordered with their reasons, ticked off and put on paper', async ({ app }) => {
  await app.getByRole('row', { name: /Fore iron/ }).click()
  await app.getByRole('button', { name: 'On today’s queue' }).click()
  await app.getByRole('link', { name: 'The day’s queue' }).click()
  const code = app.getByLabel('Put on by code')
  const lines = app.getByRole('list', { name: 'The day’s queue' }).getByRole('listitem')
  for (const [i, typed] of ['02', '20', '1'].entries()) {
    await code.fill(typed)
    await code.press('Enter')
    await expect(lines).toHaveCount(i + 2)
  }
  const order = async () => (await lines.allTextContents()).map((text) => names.exec(text)?.[0])
  expect(await order()).toEqual(['Chisel 6', 'Smoothing iron, fine', 'Smoothing iron, wide', 'Fore iron'])
  await expect(lines.nth(0)).toContainText('Straight: while the face is true from dressing.')
  await expect(lines.nth(2)).toContainText('Same bar and stops as the one before.')
  await code.fill('S1')
  await code.press('Enter')
  await expect(app.getByText('S1 is no tool’s code')).toBeVisible()
  await lines.nth(0).getByRole('checkbox').press('Space')
  await expect(app.getByText('3 irons to grind. 1 is done.')).toBeVisible()
  await expectGoodLooks(app, 'day')

  const download = app.waitForEvent('download')
  await app.getByRole('button', { name: 'The day on one sheet' }).click()
  expect(
    readFileSync(await (await download).path())
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-')
  await app.getByRole('button', { name: 'Take off 08' }).click()
  await expect(lines).toHaveCount(3)
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(lines).toHaveCount(4)
  await app.getByRole('button', { name: 'Its job: 02' }).click()
  await expect(app).toHaveURL(/#plan\/02$/)
})

import { readFileSync } from 'node:fs'
import { expect, expectAxeClean, test } from '../support/app.ts'

const names = /Chisel 6|Smoothing iron, fine|Smoothing iron, wide|Fore iron/

test('a day’s irons are put on the queue, ordered with their reasons, ticked off and put on paper', async ({ app }) => {
  await app.getByRole('row', { name: /Fore iron/ }).click()
  await app.getByRole('button', { name: 'Nicked' }).click()
  await app.getByRole('link', { name: 'Due and sharp' }).click()
  await expect(app.getByRole('region', { name: 'Its edge was hurt' })).toContainText('Fore iron')
  await app.getByRole('button', { name: 'Put all on today’s queue' }).click()
  await expect(app.getByRole('status').filter({ hasText: 'On the day’s queue: 1 iron.' })).toBeVisible()
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
  await expectAxeClean(app)

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

test('tools are scanned through with one errand, then seen at a stocktake, which says what is missing', async ({
  app,
}) => {
  await app.getByRole('link', { name: 'Scan through' }).click()
  const code = app.getByLabel('Scan or type a code')
  const scan = async (typed: string) => {
    await code.fill(typed)
    await code.press('Enter')
  }
  const scanned = app.getByRole('region', { name: 'What was scanned' })
  await app.getByLabel('What is done to each').selectOption('lent')
  await app.getByLabel('To whom').fill('Wren Oddly')
  await scan('1')
  await expect(scanned).toContainText('1 tool done.')
  await scan('1')
  await expect(app.getByText('01 was done already.')).toBeVisible()
  await scan('2')
  await expect(scanned).toContainText('2 tools done.')
  await scanned.getByRole('button', { name: 'Take back: 02' }).click()
  await expect(scanned).toContainText('1 tool done.')

  await app.getByRole('link', { name: 'Stocktake' }).click()
  await app.getByLabel('Go round in').selectOption('tool wall')
  await app.getByRole('button', { name: 'Begin', exact: true }).click()
  const seen = app.getByRole('region', { name: 'Seen, newest first' })
  await scan('13')
  await expect(seen.getByRole('listitem')).toHaveCount(1)
  await scan('2')
  await seen.getByRole('button', { name: 'Let it belong in tool wall: 02' }).click()
  await expect(seen).not.toContainText('Found in tool wall')
  await app.reload()
  await expect(seen.getByRole('listitem')).toHaveCount(2)
  await expect(app.getByRole('region', { name: 'Not seen yet' })).not.toContainText('Block iron')
  await expectAxeClean(app)
  await app.getByRole('button', { name: 'End the stocktake' }).click()
  await expect(app.getByRole('region', { name: 'The last stocktake' })).toContainText('are missing.')
})

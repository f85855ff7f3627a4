import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, test } from '../support/app.ts'

const open = (app: Page) => app.getByRole('button', { name: 'Take out, bring in' }).click()
const file = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) })
const choose = (app: Page, name: string, text: string) =>
  app.getByLabel(/^Choose (a|another) file$/).setInputFiles(file(name, text))

const HEAD =
  'number;tool name;kind;width in;thickness;bevel side;primary bevel;projection;relief;thickest shaving;shelf'
const row = (code: string, name: string, width: string) =>
  `${code};${name};chisel;${width};3,2;bevel down;25;130 mm;0;0,05;left one`

test('a table is looked at, read as the user says, and brought in, and one undo takes it back', async ({ app }) => {
  await expect(app.getByRole('row', { name: /low-angle jack/i }).first()).toBeVisible()
  const many = await app.getByRole('row').count()
  await open(app)
  await choose(
    app,
    'old list.csv',
    [HEAD, row('91', 'Butt chisel', '3/4'), row('92', '', '1'), row('93', 'Long chisel', 'wide')].join('\n'),
  )
  await expect(app.getByText('Row 4, width in: “wide” is not a figure that can be read')).toBeVisible()
  // What names the tools was not recognised, and is said.
  const bring = app.getByRole('button', { name: 'Bring in', exact: true })
  await expect(bring).toBeDisabled()
  await app.getByLabel('“tool name” is', { exact: true }).selectOption({ label: 'Name' })
  await expect(app.getByText('tools 1 new, 2 faulty')).toBeVisible()
  await expect(app.getByText('Row 3, tool name: This is missing. Fill it in.')).toBeVisible()
  await expect(app.getByLabel('Unit of “width in”')).toHaveValue('inch')
  await expectGoodLooks(app, 'rack-bring-in')
  await app.getByLabel('Leave the faulty rows out').check()
  await bring.click()
  await expect(app.getByText('old list.csv is brought in: 1 new, 2 faulty.')).toBeVisible()
  await expect(app.getByRole('row', { name: /Butt chisel/ })).toContainText('19.1')
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(app.getByRole('row')).toHaveCount(many)
})

test('the rack leaves as a zip that comes in again without a change, and a table by the keyboard', async ({ app }) => {
  await open(app)
  await expectGoodLooks(app, 'rack-in-out')
  const [zip] = await Promise.all([
    app.waitForEvent('download'),
    app.getByRole('button', { name: 'Take out', exact: true }).click(),
  ])
  expect(zip.suggestedFilename()).toBe('rack.cwrack')
  await app.getByLabel('Choose a file').setInputFiles(await zip.path())
  await expect(app.getByText(/^tools \d+ the same$/)).toBeVisible()
  await expect(app.getByText('Everything in it is here already')).toBeVisible()
  await app.keyboard.press('Escape')
  await open(app)
  await app.getByLabel('What', { exact: true }).selectOption({ label: 'stations' })
  await app.getByLabel('As', { exact: true }).selectOption({ label: 'CSV table for a spreadsheet' })
  await app.getByRole('button', { name: 'Take out', exact: true }).focus()
  const [table] = await Promise.all([app.waitForEvent('download'), app.keyboard.press('Enter')])
  expect(readFileSync(await table.path(), 'utf8')).toMatch(/^\ufeffcode,name,wheelDiameterMm,[^\r]*,id\r\nS1,/)
})

test('a file can be dropped, one that is none is refused with a word, and the tool in hand is taken out alone', async ({
  app,
}) => {
  await app
    .getByRole('row', { name: /low-angle jack/i })
    .first()
    .click()
  await open(app)
  const drop = (name: string, text: string, at = '.in-out') =>
    app.locator(at).evaluate(
      (zone, [called, content]) => {
        const dataTransfer = new DataTransfer()
        dataTransfer.items.add(new File([content as string], called as string))
        zone.dispatchEvent(new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer }))
      },
      [name, text],
    )
  await app.getByLabel('What', { exact: true }).selectOption('thisTool')
  await app.getByLabel('As', { exact: true }).selectOption({ label: 'JSON, everything but the pictures' })
  const [download] = await Promise.all([
    app.waitForEvent('download'),
    app.getByRole('button', { name: 'Take out', exact: true }).click(),
  ])
  const taken = readFileSync(await download.path(), 'utf8')
  expect(JSON.parse(taken).records.tool).toHaveLength(1)
  await drop('picture.csv', 'PK\u0003\u0004 no zip')
  await expect(app.getByText('picture.csv was not read:')).toBeVisible()
  await expect(app.getByRole('alert')).toHaveText(/This zip is damaged or cut short/)
  await drop('a.csv', 'code,note\n1,"a\n2,b')
  await expect(app.getByRole('alert')).toHaveText(/The quotation marks of row 2 do not come in pairs/)
  await drop('one tool.json', taken)
  await expect(app.getByText(/^tools 1 the same$/)).toBeVisible()
  await app.keyboard.press('Escape')
  await expect(app.locator('dialog')).toHaveCount(0)
  await drop('again.json', taken, '.tools')
  await expect(app.getByText(/^tools 1 the same$/)).toBeVisible()
})

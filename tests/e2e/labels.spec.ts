import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { PDFDocument } from 'pdf-lib'
import { expect, expectGoodLooks, test } from '../support/app.ts'

const sheet = (app: Page) => app.getByRole('dialog')
const save = (app: Page) => sheet(app).getByRole('button', { name: 'Save the labels as PDF' })
const first = (app: Page) => sheet(app).getByRole('radio', { checked: true })

/** Saves the labels. @returns the file's name, and its pages' sizes in mm */
const saved = async (app: Page) => {
  const coming = app.waitForEvent('download')
  await save(app).click()
  const download = await coming
  const pdf = await PDFDocument.load(readFileSync(await download.path()))
  const sizes = pdf.getPages().map((page) => {
    const { width, height } = page.getSize()
    return [width, height].map((points) => Math.round((points * 25.4) / 72))
  })
  return { name: download.suggestedFilename(), sizes }
}

test('labels for the tool in hand and others go on from the first free label of a started sheet, which is remembered', async ({
  app,
}) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('button', { name: 'Label', exact: true }).click()
  await expect(sheet(app).getByRole('checkbox', { checked: true })).toHaveCount(1)
  await sheet(app).getByLabel('Find by name or code').fill('wheel')
  await sheet(app)
    .getByRole('button', { name: /^Tick all/ })
    .click()
  await expect(sheet(app).getByText('labels chosen')).not.toHaveText('1 label chosen')
  await first(app).focus()
  await app.keyboard.press('ArrowDown')
  await app.keyboard.press('ArrowRight')
  await expect(first(app)).toHaveAccessibleName('Label 5, row 2, column 2')
  await sheet(app).locator('.labels-paper label').nth(19).click()
  await expect(first(app)).toHaveAccessibleName('Label 20, row 7, column 2')
  await expectGoodLooks(app, 'labels')
  const count = Number(/\d+/.exec((await sheet(app).getByText('labels chosen').textContent()) ?? '')?.[0])
  const { name, sizes } = await saved(app)
  expect(name).toMatch(/^labels-06-to-\w+\.pdf$/)
  expect(sizes).toEqual(Array(count > 2 ? 2 : 1).fill([210, 297]))
  await expect(app.getByTestId('status')).toHaveText(`Labels made: ${name}`)
  await app.getByRole('button', { name: 'Labels', exact: true }).click()
  const next = ((19 + count) % 21) + 1
  await expect(first(app)).toHaveAccessibleName(new RegExp(`^Label ${next},`))
  await expect(save(app)).toBeDisabled()
})

test('a sheet of one’s own is typed, refused where it cannot be, and single labels have a page each', async ({
  app,
}) => {
  await app.getByRole('button', { name: /S1/ }).click()
  await app.getByRole('button', { name: 'Label', exact: true }).click()
  await sheet(app).getByLabel('Sheet of labels').selectOption({ label: 'My own sheet or label' })
  const type = async (field: string, figure: string) => {
    await sheet(app).getByRole('spinbutton', { name: field }).fill(figure)
    await app.keyboard.press('Enter')
  }
  await type('labels across', '4')
  await expect(sheet(app).getByRole('alert')).toContainText('beyond the paper')
  await expect(save(app)).toBeDisabled()
  await sheet(app).getByLabel('Paper', { exact: true }).selectOption({ label: 'single labels' })
  await type('label height', '9')
  await expect(sheet(app).getByRole('alert')).toContainText('have no room')
  await type('label height', '1 in')
  await expect(sheet(app).getByRole('alert')).toHaveCount(0)
  expect(await saved(app)).toEqual({ name: 'label-S1.pdf', sizes: [[64, 25]] })
})

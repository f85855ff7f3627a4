import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import encodeQr from 'qr'
import { expect, expectAxeClean, test } from '../support/app.ts'
import { chromiumOptions } from '../support/chromium.ts'
import { filmOf, readAtKeyboard } from '../support/reader.ts'

const film = join(mkdtempSync(join(tmpdir(), 'camberwright-film-')), 'label.y4m')
writeFileSync(film, filmOf('CW:10'))

const { args, ...launch } = chromiumOptions()
test.use({
  // Asked for on purpose, and refused.
  allowedErrors: [/microphone is not allowed/],
  launchOptions: {
    ...launch,
    args: [
      ...args,
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-video-capture=${film}`,
    ],
  },
})

const status = (app: Page) => app.getByTestId('status')
const sheet = (app: Page) => app.getByRole('dialog')
const inHand = (app: Page) => app.getByRole('region', { name: 'Tool in hand' }).locator('.chip-code')
const openScan = (app: Page) => app.getByRole('button', { name: 'Scan', exact: true }).click()

test('a reader at the keyboard opens a thing from any screen, whatever has the focus, and does nothing else', async ({
  app,
}) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('link', { name: 'Plan', exact: true }).click()
  await expect(app.getByRole('link', { name: 'Plan', exact: true })).toHaveAttribute('aria-current', 'page')
  // C would make a card and 4 go to Grind.
  const cards: string[] = []
  app.on('request', (request) => {
    if (request.postData()?.includes('card.make')) cards.push(request.url())
  })
  const passed = await app.evaluateHandle(() => {
    const screens: string[] = []
    addEventListener('hashchange', () => screens.push(location.hash))
    return screens
  })

  await readAtKeyboard(app, 'CW:14')
  await expect(inHand(app)).toHaveText('14')
  await expect(app).toHaveURL(/#rack\/14$/)
  await expect(status(app)).toHaveText('14, Shooting iron, is in hand.')

  const find = app.getByRole('searchbox')
  await find.fill('long bench')
  await readAtKeyboard(app, 'CW:07/J3', { ':': 'Ö', '/': '-' })
  await expect(inHand(app)).toHaveText('07')
  await expect(find).toHaveValue('long bench')

  await app.getByRole('combobox', { name: 'Unit for lengths' }).focus()
  await readAtKeyboard(app, 'CW:S1')
  await expect(sheet(app).getByLabel('wheel diameter today')).toBeVisible()
  await expect(status(app)).toContainText('S1')
  expect(cards).toEqual([])
  expect((await passed.jsonValue()).filter((hash) => !hash.startsWith('#rack'))).toEqual([])
})

test('what is typed by hand is never taken for a reader, and a sheet that is being filled in stays', async ({
  app,
}) => {
  await app.getByRole('button', { name: 'Add a tool' }).click()
  const name = sheet(app).getByLabel('Name')
  // 60 ms from key to key is the quickest that hands are.
  await name.pressSequentially('CW:14', { delay: 60 })
  await expect(name).toHaveValue('CW:14')
  await readAtKeyboard(app, 'CW:06')
  await expect(sheet(app).getByRole('alert')).toHaveText('06 was read. Close what is open, then scan it again.')
  await expect(name).toHaveValue('CW:14')
  await expect(sheet(app)).toBeVisible()
  await app.keyboard.press('Escape')
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('heading', { name: 'Stations' }).click()
  const card = app.waitForEvent('download')
  await app.keyboard.press('c')
  expect((await card).suggestedFilename()).toContain('06')
})

test('typing a code opens it, in the find field and on the sheet, and what it cannot open it says in words', async ({
  app,
}) => {
  const find = app.getByRole('searchbox')
  await find.fill('7')
  await find.press('Enter')
  await expect(inHand(app)).toHaveText('07')
  await expect(find).toHaveValue('')
  await find.fill('p1')
  await find.press('Enter')
  await expect(find).toHaveValue('window till')
  await expect(app.getByRole('grid').getByRole('row', { name: /window till/ })).toHaveCount(4)
  await expect(app.getByRole('grid').locator('tbody tr')).toHaveCount(4)
  await find.fill('999')
  await find.press('Enter')
  await expect(status(app)).toContainText('Nothing on this rack has the code 999')

  await app.getByRole('button', { name: 'Delete', exact: true }).click()
  await expect(status(app)).toContainText('is off the rack')
  await openScan(app)
  const code = sheet(app).getByLabel('Code')
  await expect(code).toBeFocused()
  await app.keyboard.type('07')
  await app.keyboard.press('Enter')
  await expect(sheet(app).getByRole('alert')).toContainText(
    '07, Low-angle jack iron, steep, was deleted. History has it',
  )
  // Help lies over the sheet, which stays.
  await sheet(app).getByRole('button', { name: 'More on this' }).click()
  await expect(app.getByRole('heading', { name: /was deleted. History has it/ })).toBeFocused()
  await app.keyboard.press('Escape')
  await code.fill('f1')
  await sheet(app).getByRole('button', { name: 'Open it' }).click()
  await expect(sheet(app).getByLabel('guide arm')).toBeVisible()
})

/** Lets a picture go over the open sheet. */
const drop = async (app: Page, picture: Buffer): Promise<void> => {
  const files = await app.evaluateHandle(
    (bytes) => {
      const transfer = new DataTransfer()
      transfer.items.add(new File([new Uint8Array(bytes)], 'label.gif', { type: 'image/gif' }))
      return transfer
    },
    [...picture],
  )
  await sheet(app).getByText('A picture of a label can be dropped here').dispatchEvent('drop', { dataTransfer: files })
}

test('@long the camera reads a label, and a picture of one can be opened or is said to hold none', async ({ app }) => {
  await openScan(app)
  await expectAxeClean(app)
  // This browser grants all that the page itself may ask for.
  const refused = app.evaluate(() =>
    navigator.mediaDevices.getUserMedia({ audio: true }).catch((error: Error) => error.name),
  )
  expect(await refused).toBe('NotAllowedError')
  await sheet(app).getByRole('button', { name: 'Use the camera' }).click()
  await expect(sheet(app)).toBeHidden()
  await expect(inHand(app)).toHaveText('10')

  await openScan(app)
  // The camera was said yes to, so it starts by itself, and reads the same label again.
  await expect(sheet(app)).toBeHidden()
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.evaluate(() => {
    navigator.mediaDevices.getUserMedia = () => new Promise(() => undefined)
  })
  await openScan(app)
  const pick = (buffer: Buffer) =>
    sheet(app).getByLabel('Read a picture file').setInputFiles({ name: 'label.gif', mimeType: 'image/gif', buffer })
  const picture = (text: string) => Buffer.from(encodeQr(text, 'gif', { ecc: 'quartile', border: 4, scale: 24 }))
  await pick(Buffer.from('R0lGODlhAQABAIAAAP///wAAACwAAAAAAQABAAACAkQBADs=', 'base64'))
  await expect(sheet(app).getByRole('alert')).toContainText('No code was found in label.gif')
  await pick(picture('https://example.test/'))
  await expect(sheet(app).getByRole('alert')).toContainText(
    '“https://example.test/” was read, which is none of this program’s labels.',
  )
  await drop(app, picture('CW:12'))
  await expect(sheet(app)).toBeHidden()
  await expect(inHand(app)).toHaveText('12')
})

const noCamera = [
  ['NotAllowedError', 'may not be used here'],
  ['NotFoundError', 'There is no camera'],
  ['NotReadableError', 'gives no picture'],
] as const

test('a camera that is denied, missing, busy or unplugged is explained, and typing goes on', async ({ app }) => {
  await openScan(app)
  const start = sheet(app).getByRole('button', { name: 'Use the camera' })
  for (const [name, words] of noCamera) {
    await app.evaluate((error) => {
      navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('', error))
    }, name)
    await start.click()
    await expect(sheet(app).getByRole('alert')).toContainText(words)
  }
  await app.evaluate(() => {
    const stream = document.createElement('canvas').captureStream()
    navigator.mediaDevices.getUserMedia = () => Promise.resolve(stream)
    setTimeout(() => stream.getTracks()[0]?.dispatchEvent(new Event('ended')), 500)
  })
  await start.click()
  await expect(sheet(app).getByRole('button', { name: 'Stop the camera' })).toBeVisible()
  await expect(sheet(app).getByRole('alert')).toContainText('unplugged')
  await sheet(app).getByLabel('Code').fill('14')
  await app.keyboard.press('Enter')
  await expect(inHand(app)).toHaveText('14')
})

import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { unzipSync } from 'fflate'
import { tableNouns } from '../../main/contract/inOut.ts'
import { writeBundle } from '../../main/inOut/bundle.ts'
import { formOf } from '../../main/inOut/nouns.ts'
import { lessonFiles, lessonText } from '../lessons/support.ts'
import { expect, test } from '../support/app.ts'
import { openGrind } from '../support/grindPage.ts'

/** What a page would run, follow, turn round or be pushed apart by, if it took words for anything but words. */
const hostileWords = [
  '<img src=x onerror=window.ran=1><script>window.ran=1</script>',
  '"><svg/onload=window.ran=1><a href="javascript:window.ran=1">x</a>',
  "' autofocus onfocus='window.ran=1' style='background:url(//evil.invalid)",
  'javascript:window.ran=1//{{constructor}}$t(common:close)',
  '\u202eabc\u202c\u2067\u05d0\u0665</title><base href=//evil.invalid>',
  'n'.repeat(100),
] as const
const [SCRIPT, , , , , LONG] = hostileWords

/** Notes what would tell that words were taken for more, from before the page's first script on. */
const watched = async (app: Page): Promise<string[]> => {
  const told: string[] = []
  const own = new URL(app.url()).origin
  app.on('dialog', (dialog) => {
    told.push(`dialog ${dialog.message()}`)
    void dialog.dismiss()
  })
  app.on('request', (request) => {
    if (!request.url().startsWith(own) && !/^(blob|data):/.test(request.url())) told.push(`asked ${request.url()}`)
  })
  await app.exposeFunction('toldByPolicy', (words: string) => void told.push(words))
  await app.evaluate(() => {
    document.addEventListener('securitypolicyviolation', (refused) => {
      const { toldByPolicy } = window as unknown as { toldByPolicy(words: string): void }
      toldByPolicy(`${refused.effectiveDirective} ${refused.blockedURI}`)
    })
  })
  return told
}

/** Nothing in the page came of the words but text. */
const expectOnlyText = async (app: Page): Promise<void> => {
  const made = app.locator(
    '[onerror], [onload], [onfocus], img[src="x"], base, a[href^="javascript" i], script:not([src])',
  )
  await expect(made).toHaveCount(0)
  expect(await app.evaluate(() => 'ran' in window)).toBe(false)
}

/** The demo workshop as it is taken out, with each entry of words in it hostile; names stay apart by their number. */
const hostileRack = (zip: Uint8Array): Uint8Array => {
  const files = unzipSync(zip)
  const document = JSON.parse(new TextDecoder().decode(files['rack.json']))
  let next = 0
  for (const noun of tableNouns) {
    const keys = formOf(noun).columns.flatMap(({ key, holds }) => (holds.kind === 'words' ? [key] : []))
    for (const record of document.records[noun] ?? [])
      for (const key of keys) record[key] = `${++next} ${hostileWords[next % hostileWords.length]}`.slice(0, 100)
  }
  delete files['rack.json']
  return writeBundle(JSON.stringify(document), new Map(Object.entries(files)))
}

const bringIn = async (app: Page, name: string, buffer: Buffer): Promise<void> => {
  await app.getByRole('button', { name: 'Take out, bring in' }).click()
  await app.getByLabel(/^Choose (a|another) file$/).setInputFiles({ name, mimeType: '', buffer })
  await app.getByRole('button', { name: 'Bring in', exact: true }).click()
  await expect(app.getByTestId('status')).toContainText(`${name} is brought in`)
}

test('@long nothing in a rack or a table runs, calls out or becomes anything but text', async ({ app }) => {
  const told = await watched(app)
  await app.getByRole('button', { name: 'Take out, bring in' }).click()
  const downloading = app.waitForEvent('download')
  await app.getByRole('button', { name: 'Take out', exact: true }).click()
  const zip = readFileSync(await (await downloading).path())
  await app.keyboard.press('Escape')
  await bringIn(app, `${SCRIPT}.cwrack`, Buffer.from(hostileRack(zip)))
  const cells = hostileWords.map((words) => `"${words.replaceAll('"', '""')}"`)
  // Taken back they lie in the scrap box, where no other test's codes should meet them.
  const rows = cells.map((words, i) => `8${i + 3},${words},${words},"chisel",20,3,down,25,130,0,0.05`)
  const head = 'code,name,note,kind,widthMm,thicknessMm,bevelSide,bevelAngleDeg,projectionMm,reliefMm,shavingDepthMm'
  await bringIn(app, 'table.csv', Buffer.from([head, ...rows].join('\n')))
  for (const words of hostileWords) await expect(app.getByRole('grid').getByText(words).first()).toBeVisible()
  await app.getByRole('row', { name: LONG }).first().click()
  for (const screen of ['Plan', 'Set up', 'Measure', 'Rack']) {
    await app.getByRole('link', { name: screen, exact: true }).click()
    await expect(app.getByRole('heading', { level: 1 })).toBeVisible()
    await expectOnlyText(app)
  }
  const wide = await app.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
  expect(wide).toBe(0)
  expect(told).toEqual([])
})

/** Every text of a lesson hostile, as far as its schema lets it be text at all. */
const hostileLesson = (): string => {
  const lesson = JSON.parse(lessonText(lessonFiles.find((file) => file.includes('ink')) as string))
  let next = 0
  const texts = new Set(['title', 'about', 'heading', 'text', 'question', 'right', 'wrong', 'notes', 'hints'])
  const words = (): string =>
    `${next++} ${hostileWords[next % hostileWords.length]}`.replaceAll(/[{}$]/g, '').slice(0, 70)
  const fill = (node: unknown, of: string): unknown => {
    if (typeof node === 'string') return texts.has(of) ? words() : node
    if (Array.isArray(node)) return node.map((each) => fill(each, of))
    if (node === null || typeof node !== 'object') return node
    return Object.fromEntries(Object.entries(node).map(([key, value]) => [key, fill(value, key)]))
  }
  return JSON.stringify({ ...(fill(lesson, '') as object), id: 'hostile', title: SCRIPT })
}

test('nothing in a lesson or a job file runs, calls out or becomes anything but text', async ({ app }) => {
  const told = await watched(app)
  await app.getByRole('link', { name: 'Teach', exact: true }).click()
  const choose = app.locator('input[type=file]')
  const give = (text: string) =>
    choose.setInputFiles({ name: `${SCRIPT}.json`, mimeType: '', buffer: Buffer.from(text) })
  await give(hostileLesson().replace('"minutes":10', `"${SCRIPT}":10`))
  await expect(app.getByRole('alert').first()).toContainText('onerror')
  await expectOnlyText(app)
  await give(hostileLesson())
  await app.getByRole('button', { name: SCRIPT, exact: true }).click()
  await expect(app.locator('.teach-words')).toContainText('<')
  await app.locator('.teach-choices').getByRole('radio').first().check()
  await app.getByRole('button', { name: 'That is my answer' }).click()
  await expect(app.locator('.teach-verdict')).toContainText('window.ran=1', { timeout: 30_000 })
  await expectOnlyText(app)

  await app.getByRole('link', { name: 'Rack', exact: true }).click()
  await openGrind(app)
  await app.getByRole('button', { name: 'Job file' }).click()
  const blade = { widthMm: SCRIPT, [SCRIPT]: SCRIPT, bevelSide: SCRIPT, thicknessMm: LONG }
  await app.getByLabel('Open a job file').setInputFiles({
    name: `${SCRIPT}.cwjob`,
    mimeType: '',
    buffer: Buffer.from(JSON.stringify({ version: 1, blade, [hostileWords[1]]: {} })),
  })
  await expect(app.getByRole('alert')).toContainText(`${SCRIPT}.cwjob cannot be opened`)
  await expectOnlyText(app)
  expect(told).toEqual([])
})

import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { build, isBuildStale } from '../main/start/build.ts'
import { chromiumOptions } from './support/chromium.ts'
import { startHostProcess } from './support/hostProcess.ts'

/** `npm run pictures`: the README's pictures and clip, taken anew from the built program with the demo workshop. */
const root = join(import.meta.dirname, '..')
const SIZE = { width: 1440, height: 900 }
const QUALITY = 0.85
/** Longest that a machine without graphics takes for some hundred pictures. */
const CLIP_MS = 300_000

const take = async (page: Page, name: string): Promise<void> => {
  await page.waitForTimeout(1500)
  const png = (await page.screenshot()).toString('base64')
  // The engine that shows the page writes the small form, too.
  const webp = await page.evaluate(
    async ([data, quality]) => {
      const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${data}`)).blob())
      const canvas = new OffscreenCanvas(image.width, image.height)
      canvas.getContext('2d')?.drawImage(image, 0, 0)
      const bytes = await (await canvas.convertToBlob({ type: 'image/webp', quality: Number(quality) })).arrayBuffer()
      return Array.from(new Uint8Array(bytes))
    },
    [png, QUALITY] as const,
  )
  writeFileSync(join(root, 'assets', 'pictures', `${name}.webp`), Uint8Array.from(webp))
}

const go = (page: Page, screen: string) => page.getByRole('link', { name: screen, exact: true }).click()

const field = async (page: Page, name: string, text: string): Promise<void> => {
  const typed = page.getByRole('spinbutton', { name, exact: true })
  await typed.fill(text)
  await typed.press('Enter')
}

/** Four sweeps of the moving model as the program itself makes a clip of them. */
const takeClip = async (page: Page, name: string): Promise<void> => {
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await field(page, 'from sweep', '90')
  await field(page, 'to sweep', '94')
  await field(page, 'pictures a second', '12')
  await field(page, 'width of the clip', '560')
  const given = page.waitForEvent('download', { timeout: CLIP_MS })
  await page.getByRole('button', { name: /^Save the clip/ }).click()
  await (await given).saveAs(join(root, 'assets', 'pictures', `${name}.webm`))
  await page.getByRole('button', { name: 'Save', exact: true }).click()
}

const takeAll = async (page: Page): Promise<void> => {
  await page
    .getByRole('row', { name: /low-angle jack/i })
    .first()
    .click()
  await take(page, 'rack')
  await go(page, 'Plan')
  await take(page, 'plan')
  await go(page, 'Grind')
  await page.getByRole('slider', { name: 'Moment of the grind' }).fill('90')
  await take(page, 'grind')
  await takeClip(page, 'sweep')
  await go(page, 'Teach')
  await page.getByRole('button', { name: 'Fingers: the same stops, another edge' }).click()
  await page.getByRole('radio').first().check()
  await page.getByRole('button', { name: 'That is my answer' }).click()
  await page.locator('.teach-verdict').waitFor()
  await take(page, 'teach')
}

if (isBuildStale(root)) await build(root)
const host = await startHostProcess()
const browser = await chromium.launch(chromiumOptions())
// Pictures are written in the page by what its own content policy would not let be fetched.
const context = await browser.newContext({ viewport: SIZE, bypassCSP: true, reducedMotion: 'reduce' })
const page = await context.newPage()
await page.goto(await host.freshAddress())
await takeAll(page)
await browser.close()
await host.stop()

import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { PDFDocument } from 'pdf-lib'
import german from '../../assets/texts/de/common.json' with { type: 'json' }
import { drawn, expect, expectAxeClean, settingKept, takePicture, test } from '../support/app.ts'
import { WORKED_OUT_MS } from '../support/grindPage.ts'
import { wordsOf } from '../support/pdfWords.ts'
import { speakBackwards } from '../support/pseudoLocale.ts'

const ironRow = (app: Page) => app.getByRole('row', { name: /Low-angle jack iron 57/ })
const goTo = (app: Page, screen: string) => app.getByRole('link', { name: screen, exact: true }).click()

test('the window speaks German at once, takes and writes decimal commas, makes a German card, and goes back', async ({
  app,
}) => {
  const kept = settingKept(app)
  await app.getByLabel('Language').selectOption('de')
  await kept
  await expect(app.locator('html')).toHaveAttribute('lang', 'de')
  await ironRow(app).click()
  for (const screen of Object.values(german.screen)) {
    await goTo(app, screen)
    await expect(app.getByRole('link', { name: screen, exact: true })).toHaveAttribute('aria-current', 'page')
  }
  await goTo(app, german.screen.setUp)
  const projection = app.getByRole('spinbutton', { name: 'Überstand' })
  await expect(projection).toHaveValue('130,0')
  await projection.fill('131,5')
  await projection.press('Enter')
  await expect(projection).toHaveValue('131,5')
  // Kept, before the next is typed: on a busy machine that takes a while.
  await expect(app.getByTestId('status')).toContainText('ist geändert')
  await projection.fill('130.0 mm')
  await projection.press('Enter')
  await expect(projection).toHaveValue('130,0')
  await expectAxeClean(app)

  const download = app.waitForEvent('download')
  await app.getByRole('button', { name: german.jobCard, exact: true }).click()
  const card = readFileSync(await (await download).path())
  expect((await PDFDocument.load(card)).getTitle()).toBe('Karte 06')
  expect(await wordsOf(card)).toContain('Stangenachse bis Schneide')
  expect(await wordsOf(card)).toContain('Fase an der Spitze 25,0°')

  await app.reload()
  await expect(app.getByRole('link', { name: german.screen.rack, exact: true })).toBeVisible()
  await app.getByLabel(german.settings.language.label).selectOption('en')
  await expect(app.getByRole('link', { name: 'Rack', exact: true })).toBeVisible()
  await expect(app.locator('html')).toHaveAttribute('lang', 'en')
})

/** What is written somewhere it cannot be read: beyond the window's sides, or beyond whatever cuts it off. */
const cutOff = (app: Page): Promise<readonly string[]> =>
  app.evaluate(() => {
    const hasWords = (element: Element) =>
      [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim() !== '')
    const isHeardOnly = (element: Element | null): boolean =>
      element !== null && (getComputedStyle(element).clipPath !== 'none' || isHeardOnly(element.parentElement))
    const cuts = (element: Element) => {
      const { overflowX, textOverflow } = getComputedStyle(element)
      return (overflowX === 'hidden' || overflowX === 'clip') && textOverflow !== 'ellipsis'
    }
    const sidesOf = (element: Element): readonly [number, number] => {
      const range = document.createRange()
      range.selectNodeContents(element)
      const { left, right } = range.getBoundingClientRect()
      return [left, right]
    }
    const isCut = (element: Element): boolean => {
      const [left, right] = sidesOf(element)
      if (left < -1 || right > innerWidth + 1) return true
      for (let above: Element | null = element; above; above = above.parentElement) {
        if (getComputedStyle(above).textOverflow === 'ellipsis') return false
        const box = above.getBoundingClientRect()
        if (cuts(above) && (left < box.left - 1 || right > box.right + 1)) return true
      }
      return false
    }
    const all = [...document.querySelectorAll('#root *')].filter(
      (element) =>
        hasWords(element) &&
        element.checkVisibility({ visibilityProperty: true }) &&
        // The list of tools is moved sideways in its own frame; the way past the header comes with the keyboard.
        element.closest('.rack-scroll, .skip-link') === null &&
        !isHeardOnly(element),
    )
    return all.filter(isCut).map((element) => element.textContent ?? '')
  })

/** How far window and screen can be moved sideways. */
const sidewaysPx = (app: Page): Promise<number> =>
  app.evaluate(() =>
    [document.documentElement, ...document.querySelectorAll('main')].reduce(
      (sum, { scrollWidth, clientWidth }) => sum + scrollWidth - clientWidth,
      0,
    ),
  )

const middleOf = async (app: Page, selector: string): Promise<number> => {
  const box = await app.locator(selector).boundingBox()
  if (!box) throw new Error(`nothing at ${selector}`)
  return box.x + box.width / 2
}

for (const widthPx of [1280, 640])
  test(`@long read from right to left, ${widthPx} px wide: words turn round, nothing is cut off, and what is drawn stays as it lies`, async ({
    app,
  }) => {
    await speakBackwards(app)
    await app.setViewportSize({ width: widthPx, height: 800 })
    await app.getByLabel('Language').selectOption('de')
    await expect(app.locator('html')).toHaveAttribute('dir', 'rtl')
    await ironRow(app).click()
    const screens = app.locator('.nav a')
    await expect(screens).toHaveCount(6)
    for (let k = 0; k < 6; k++) {
      await screens.nth(k).click()
      await expect(screens.nth(k)).toHaveAttribute('aria-current', 'page')
      await expect(app.locator('main :is(h2, .figure, table, li)').first()).toBeVisible()
      if (k === 3) await expect(app.locator('.scene-overlay[data-placed]')).toBeAttached({ timeout: WORKED_OUT_MS })
      await drawn(app)
      await takePicture(app, `backwards-${widthPx}-${k}`)
      expect.soft(await sidewaysPx(app), `screen ${k}`).toBe(0)
      expect.soft(await cutOff(app), `screen ${k}`).toEqual([])
      if (k === 3) {
        expect(await middleOf(app, '[data-handle="stopLeft"]')).toBeLessThan(
          await middleOf(app, '[data-handle="stopRight"]'),
        )
        expect(await middleOf(app, '[data-testid="relief-left"]')).toBeLessThan(
          await middleOf(app, '[data-testid="relief-right"]'),
        )
      }
    }
    expect(await middleOf(app, '.nav li:first-child, .nav a:first-child')).toBeGreaterThan(
      await middleOf(app, '.nav a:nth-child(2)'),
    )
    await app.locator('header select').first().selectOption('en')
    await expect(app.locator('html')).toHaveAttribute('dir', 'ltr')
  })

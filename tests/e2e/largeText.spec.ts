import type { Page } from '@playwright/test'
import { drawn, expect, takePicture, test } from '../support/app.ts'
import { chromiumOptions } from '../support/chromium.ts'

/** The window's own size of text, set by its user to twice the usual. */
const options = chromiumOptions()
test.use({ launchOptions: { ...options, args: [...options.args, '--blink-settings=defaultFontSize=32'] } })

/** Pairs of these that lie over each other, by their words. */
const overlaps = (app: Page, selector: string): Promise<readonly string[]> =>
  app.evaluate((wanted) => {
    const isTold = (element: Element): boolean => element.getClientRects().length > 0 && element.textContent !== ''
    const all = [...document.querySelectorAll(wanted)].filter(isTold)
    const boxes = all.map((element) => ({ text: element.textContent, box: element.getBoundingClientRect() }))
    return boxes.flatMap(({ text, box }, k) =>
      boxes
        .slice(k + 1)
        .filter(
          ({ box: other }) =>
            Math.min(box.right, other.right) - Math.max(box.left, other.left) > 2 &&
            Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top) > 2,
        )
        .map((other) => `${text} / ${other.text}`),
    )
  }, selector)

/** Those that reach beyond the window's sides, by their words. */
const cutOff = (app: Page, selector: string): Promise<readonly string[]> =>
  app.evaluate((wanted) => {
    const isCut = (element: Element): boolean => {
      const { left, right } = element.getBoundingClientRect()
      return left < -1 || right > innerWidth + 1
    }
    return [...document.querySelectorAll(wanted)].filter(isCut).map((element) => element.textContent ?? '')
  }, selector)

/** What may not lie over one another on each screen. */
const screens = [
  ['Plan', '.figure, .options label, .key'],
  ['Set up', '.beside .figure > :first-child, .given, .entry, .scale-bar text'],
  ['Grind', '.scene-label, .grind-key-name, .relief-figures dd, .sweep-counter, .event-mark'],
] as const

test('text at twice its size is cut off nowhere and lies over nothing', async ({ app }) => {
  expect(await app.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe('32px')
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  for (const [name, apart] of screens) {
    await app.getByRole('link', { name, exact: true }).click()
    await expect(app.locator(apart.split(',')[0] as string).first()).toBeVisible()
    if (name === 'Grind') await expect(app.locator('.scene-overlay[data-placed]')).toBeVisible()
    await drawn(app)
    await takePicture(app, `large-${name.replace(' ', '')}`)
    await expect.poll(() => overlaps(app, apart), name).toEqual([])
    expect(await cutOff(app, apart), name).toEqual([])
    expect(await app.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(1440)
  }
})

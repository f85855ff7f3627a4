import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, test } from '../support/app.ts'

const drawing = (app: Page) => app.getByRole('img', { name: /Wheel, bar and blade to scale/ })
const projection = (app: Page) => app.getByLabel('projection, bar axis to edge')

const setUp = async (app: Page): Promise<void> => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('link', { name: 'Set up' }).click()
  await expect(drawing(app)).toBeVisible()
}

test('two figures are given, the third is found and said both ways', async ({ app }) => {
  await setUp(app)
  // R 125, P 130, o 15, b 25 degrees: C = hypot(130 + 125 sin b, 15 - 125 cos b) = 207.57, gap 76.6, height 82.6.
  await expect(app.locator('.figure-found')).toContainText('76.6')
  await expect(app.getByText(/Set the bar 76.6\smm from the wheel, its axis 82.6\smm over the top/)).toBeVisible()
  await expect(app.getByText('1 mm more turns the bevel by −0.67°')).toBeVisible()
  await projection(app).fill('132')
  await projection(app).press('Enter')
  await expect(app.locator('.figure-found')).not.toContainText('76.6')
  await expect(drawing(app)).toHaveAccessibleName(/projection 132.0/)
})

test('which of the three is found can be chosen, and the others stay as they stand', async ({ app }) => {
  await setUp(app)
  await app.getByLabel('bevel', { exact: true }).check()
  await expect(app.locator('.figure-found')).toContainText('25.0°')
  const gap = app.getByLabel('bar to wheel, surface to surface')
  await expect(gap).toHaveValue('76.57')
  await gap.fill('78')
  await gap.press('Enter')
  // 1.43 mm more at 0.766 degrees a millimetre: 26.1.
  await expect(app.locator('.figure-found')).toContainText('26.1°')
  await app.getByLabel('projection', { exact: true }).check()
  await expect(app.locator('.figure-found')).toContainText('130.0')
})

test('a bar that cannot stand there is refused at its field, the last good drawing stays', async ({ app }) => {
  await setUp(app)
  await app.getByLabel('bevel', { exact: true }).check()
  const before = await drawing(app).getAttribute('aria-label')
  const gap = app.getByLabel('bar to wheel, surface to surface')
  await gap.fill('400')
  await gap.press('Enter')
  await expect(gap).toHaveAttribute('aria-invalid', 'true')
  await expect(gap).toHaveAccessibleDescription(/do not meet at an edge/)
  await expect(gap).toHaveValue('400')
  await expect(drawing(app)).toHaveAttribute('aria-label', before ?? '')
  await gap.press('Escape')
  await expect(gap).toHaveValue('76.57')
  await expect(app.getByText('The figures shown are the last good ones.')).toBeHidden()
})

test('the wheel measured here is kept with its station, and the undo brings the old figure back', async ({ app }) => {
  await setUp(app)
  const wheel = app.getByLabel(/^wheel, measured/)
  await wheel.fill('240')
  await wheel.press('Enter')
  await expect(app.getByTestId('status')).toContainText('Station')
  await expect(drawing(app)).toHaveAccessibleName(/wheel 240.0/)
  const today = new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'short' })
  await expect(app.getByText(`wheel, measured ${today}`)).toBeVisible()
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(drawing(app)).toHaveAccessibleName(/wheel 250.0/)
})

test('the drawing is true to the scale written on it', async ({ app }) => {
  await setUp(app)
  // The drawing finds its room once more when the figures round it have their size; scale and wheel are read until they are of one drawing.
  await expect(async () => {
    const written = await app.getByText(/^drawn 1 : [\d.]+$/).textContent()
    const scale = Number(/[\d.]+$/.exec(written ?? '')?.[0])
    const widthPx = await app.locator('.wheel').evaluate((wheel: SVGPathElement) => wheel.getBBox().width)
    // 96 CSS pixels an inch: a 250 mm wheel is 250 x 96 / 25.4 / scale pixels wide.
    expect(Math.abs(widthPx - (250 * 96) / 25.4 / scale)).toBeLessThan(0.5)
  }).toPass({ timeout: 10_000 })
})

test('another station moves the bar', async ({ app }) => {
  await setUp(app)
  const before = await app.locator('.figure-found').textContent()
  await app.getByLabel('Station').selectOption({ index: 1 })
  await expect(app.locator('.figure-found')).not.toHaveText(before ?? '')
})

const sizes = [
  { width: 1280, height: 800 },
  { width: 1440, height: 900 },
  { width: 1920, height: 1080 },
]

interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

const meet = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

test('no figure lies on another, at any size of window', async ({ app }) => {
  await setUp(app)
  for (const size of sizes) {
    await app.setViewportSize(size)
    await expect(drawing(app)).toHaveCSS('width', `${size.width}px`)
    const boxes = await app.locator('.beside, .given').evaluateAll((parts) =>
      parts.map((part): Box => {
        const { left, top, right, bottom } = part.getBoundingClientRect()
        return { left, top, right, bottom }
      }),
    )
    expect(boxes).toHaveLength(5)
    expect(boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => meet(a, b)))).toEqual([])
    for (const { right } of boxes) expect(right).toBeLessThanOrEqual(size.width)
  }
})

test('looks right in light and dark', async ({ app }) => {
  await setUp(app)
  await expectGoodLooks(app, 'set-up')
})

test('the bar is measured as the station says, every iron has its mark, ink and wear are foretold', async ({ app }) => {
  await setUp(app)
  await app.getByLabel('Bar is measured by').selectOption({ label: "from the wheel to the bar's top" })
  // 207.57 - 125 + 6
  await expect(app.locator('.figure-found')).toContainText('88.6')
  await app.getByLabel('bevel', { exact: true }).check()
  const height = app.getByLabel("wheel's top to the bar's top")
  await expect(height).toHaveValue(/^88\.5/)
  await height.fill('90')
  await height.press('Enter')
  await expect(app.locator('.figure-found')).toContainText('26.1°')
  const ink = app.getByRole('region', { name: 'Ink in the first sweeps' })
  await ink.getByLabel('the bevel that is there').fill('32')
  await ink.getByLabel('the bevel that is there').press('Enter')
  await expect(ink).toContainText('The ink goes at the heel')
  await expect(ink).toContainText(/For a match: \d+\.\d\smm less projection, or the bar \d+\.\d\smm further away/)
  const worn = app.getByRole('region', { name: 'After wear or dressing' })
  await worn.getByLabel('wheel diameter then').fill('240')
  await worn.getByLabel('wheel diameter then').press('Enter')
  await expect(worn).toContainText(/bar left where it is2\d\.\d° \(\+\d\.\d\d°\)/)
  await worn.getByRole('button', { name: 'The wheel is so now' }).click()
  await expect(app.getByLabel(/^wheel, measured/)).toHaveValue('240.0')
  await app.getByRole('link', { name: /^24 / }).click()
  await expect(app.getByRole('region', { name: 'Tool in hand' })).toContainText('24')
})

test('a mark of several irons names them below the rule, by pointer and by keyboard, and each can be taken', async ({
  app,
}) => {
  await setUp(app)
  const rule = app.getByRole('region', { name: 'Every iron with the bar as it stands' })
  await expect(rule.getByRole('listitem')).toHaveText(/^06 Low-angle jack iron: projection 130.0\smm for 25.0°$/)
  await rule.getByRole('link', { name: /^04 / }).hover()
  await expect(rule.getByRole('listitem')).toHaveText(/^04 .+: projection 119.0\smm for 33.0°$/)
  await rule.getByRole('link', { name: /^04 / }).focus()
  await app.keyboard.press('Tab')
  await expect(rule.getByRole('button', { name: /^11, 17: irons at projection 122.9\smm$/ })).toBeFocused()
  await expect(rule.getByRole('listitem')).toHaveText([/^11 .+: 122.9\smm for 30.0°$/, /^17 .+: 122.9\smm for 30.0°$/])
  await app.keyboard.press('Enter')
  await app.keyboard.press('Tab')
  await expect(rule.getByRole('link', { name: /^17 / })).toBeFocused()
  await app.keyboard.press('Enter')
  await expect(app.getByRole('region', { name: 'Tool in hand' })).toContainText('17')
})

test('irons that cannot be ground so are told with the bar as the station measures it', async ({ app }) => {
  await setUp(app)
  await app.getByLabel('Bar is measured by').selectOption({ label: "from the wheel to the bar's top" })
  await projection(app).fill('396')
  await projection(app).press('Enter')
  // C = hypot(396 + 52.83, 15 - 113.29) = 459.47; the chisel's 20 degrees would need 405 mm of projection, more than 400.
  await expect(
    app.getByText(/^With 340.5\smm from the wheel's top to the bar's top there is no projection for 24\.$/),
  ).toBeVisible()
})

test('without a measured bevel the ink starts from the one that this set-up grinds, and says so', async ({ app }) => {
  await setUp(app)
  const ink = app.getByRole('region', { name: 'Ink in the first sweeps' })
  await expect(ink.getByLabel('the bevel that is there')).toHaveValue('26.6°')
  await expect(ink).toContainText('is assumed')
  await expect(ink).toContainText('The ink goes in the middle')
  await expect(app.getByText('1 mm off the diameter turns the bevel by +0.31°.')).toBeVisible()
  await ink.getByLabel('the bevel that is there').fill('27')
  await ink.getByLabel('the bevel that is there').press('Enter')
  await expect(ink).not.toContainText('is assumed')
})

test('with the bar in front of the wheel the drawing says which way front and up are', async ({ app }) => {
  await setUp(app)
  await app.getByLabel('Bar stands').selectOption('inFront')
  await expect(drawing(app).getByText('front', { exact: true })).toBeVisible()
  await expect(app.getByText(/its axis 82.6\smm before the front/)).toBeVisible()
})

import type { Page } from '@playwright/test'
import { expect, expectAxeClean, test } from '../support/app.ts'
import { openGrind, seekSweep } from '../support/grindPage.ts'

/** Opens the low-angle jack's grind at a sweep, with these tools laid out by keys alone. */
const layOut = async (app: Page, sweep: number, ...names: readonly string[]): Promise<void> => {
  await openGrind(app)
  await seekSweep(app, sweep)
  await app.getByRole('button', { name: 'Tools', exact: true }).focus()
  await app.keyboard.press('Enter')
  for (const name of names) {
    await app.getByRole('checkbox', { name }).focus()
    await app.keyboard.press('Space')
  }
  await app.keyboard.press('Escape')
}

const region = (app: Page, name: string) => app.getByRole('region', { name, exact: true })

/** The thickest leaf at a place, from the drawing's words (mm). */
const leafMm = async (app: Page, place: string): Promise<number> => {
  const words = await region(app, 'Straightedge')
    .getByRole('group', { name: /Thickest leaf/ })
    .getAttribute('aria-label')
  return Number(new RegExp(`${place} ([\\d.]+)`).exec(words ?? '')?.[1])
}

test('@long a straightedge rocks on the edge, a leaf goes under and a thicker one does not', async ({ app }) => {
  await layOut(app, 60, 'Straightedge')
  const view = region(app, 'Straightedge')
  const reliefMm = Number(await app.getByTestId('relief-right').textContent())
  expect(reliefMm).toBeGreaterThan(0.1)
  expect(Math.abs((await leafMm(app, 'right corner')) - reliefMm)).toBeLessThan(0.055)
  expect(await leafMm(app, 'left corner')).toBe(await leafMm(app, 'right corner'))

  const leaf = view.getByRole('spinbutton', { name: 'leaf in hand' })
  await leaf.fill('0.1')
  await leaf.press('Enter')
  await expect(view.getByText(/^It goes under at the right corner: the gap there is 0\.\d{3}.mm\.$/)).toBeVisible()
  for (let k = 0; k < 4; k++) {
    await view.getByRole('button', { name: 'thicker' }).focus()
    await app.keyboard.press('Enter')
  }
  await expect(leaf).toHaveValue('0.30')
  await expect(view.getByText(/^It does not go under at the right corner/)).toBeVisible()

  const straightedge = view.getByRole('slider', { name: 'Straightedge' })
  await expect(straightedge).toHaveAttribute('aria-valuetext', /^touches at/)
  await straightedge.focus()
  await app.keyboard.press('Home')
  await expect(view.getByText(/^It goes under at the right corner/)).toBeVisible()
  await expect(view.getByText(/^Rocked onto the left, the right corner gapes/)).toBeVisible()
  expect(await leafMm(app, 'left corner')).toBe(0)
  expect(await leafMm(app, 'right corner')).toBeGreaterThan(2 * reliefMm)
  const place = view.getByRole('slider', { name: 'Leaf, place across' })
  await place.focus()
  await app.keyboard.press('Home')
  await expect(place).toHaveAttribute('aria-valuetext', /^0\.30.mm does not go under at the left corner$/)

  const box = await straightedge.locator('.tool-body').boundingBox()
  if (!box) throw new Error('no straightedge')
  await app.mouse.move(box.x + box.width - 20, box.y + 8)
  await app.mouse.down()
  await app.mouse.move(box.x + box.width - 20, box.y + 120, { steps: 4 })
  await app.mouse.up()
  await expect(straightedge).toHaveAttribute('aria-valuenow', '1')
  const rockedMm = await leafMm(app, 'left corner')
  await seekSweep(app, 20)
  await expect.poll(() => leafMm(app, 'left corner')).toBeLessThan(rockedMm)
  await expectAxeClean(app)
})

test('protractor and rule measure this job; the stopwatch counts both times', async ({ app }) => {
  await layOut(app, 60, 'Protractor', 'Rule', 'Stopwatch')
  const protractor = region(app, 'Protractor')
  const words = (await protractor.getByRole('img').getAttribute('aria-label')) ?? ''
  const [tip, chord] = [...words.matchAll(/(\d+\.\d)°/g)].map(([, deg]) => Number(deg)) as [number, number]
  expect(tip).toBeGreaterThan(25)
  expect(chord).toBeGreaterThan(tip)
  await expect(protractor.getByText(/^The arm lies on edge and heel|^The bevel is not one surface/)).toBeVisible()

  const rule = region(app, 'Rule')
  await rule.getByRole('radio', { name: 'width' }).focus()
  await app.keyboard.press('Space')
  await expect(rule.getByText('The rule reads 57.0 mm')).toBeVisible()
  const end = rule.getByRole('slider', { name: 'Rule, reading end' })
  await end.focus()
  await app.keyboard.press('PageDown')
  await expect(end).toHaveAttribute('aria-valuetext', /^on middle, 28\.50.mm from the other end$/)
  await app.keyboard.press('Shift+ArrowLeft')
  await expect(end).toHaveAttribute('aria-valuetext', /^at 23\.50.mm, 23\.50.mm from the other end$/)
  await rule.getByRole('radio', { name: 'relief' }).focus()
  await app.keyboard.press('Space')
  await expect(rule.getByText(/cannot see 0\.\d\d.mm/)).toBeVisible()

  const watch = region(app, 'Stopwatch')
  const press = async (name: string) => {
    await watch.getByRole('button', { name }).focus()
    await app.keyboard.press('Enter')
  }
  await press('start')
  await press('take this moment')
  await seekSweep(app, 80)
  await press('take this moment')
  await press('stop')
  await expect(watch.getByRole('listitem').first()).toContainText(
    'at sweep 80.0: 20.0 sweeps, 1 min 30.0 s of grinding',
  )
  const counted = await watch.getByRole('status').textContent()
  expect(counted).not.toMatch(/^0 min 00\.0 s/)
  await expectAxeClean(app)
})

import type { Page } from '@playwright/test'
import { drawn, expect, expectAxeClean, expectGoodLooks, takePicture, test } from '../support/app.ts'
import { momentSlider, openGrind, seekSweep, WORKED_OUT_MS } from '../support/grindPage.ts'
import { picturesPerSecond, rendererOf } from '../support/pictures.ts'

/** The three-dimensional picture has come to rest, at its sharpest. */
const expectStill = (app: Page): Promise<void> =>
  expect(app.getByRole('application')).toHaveAttribute('data-still', 'true')

const key = (app: Page, name: string) => app.getByRole('button', { name, exact: true })
const reliefMm = async (app: Page, side: 'left' | 'right'): Promise<number> =>
  Number(await app.getByTestId(`relief-${side}`).textContent())
const glass = (app: Page) => app.getByRole('img', { name: /^The edge, magnified/ })
const turns = (app: Page, side: 'left' | 'right') => app.getByRole('spinbutton', { name: `turns, ${side}` })

/** Fewer pictures than this a second means standing still, however busy the machine; the figure itself is told, not judged. */
const LEAST_PER_SECOND = 0.5

test('plays: the relief grows, pauses, and an earlier moment comes back exactly', async ({ app }, info) => {
  await openGrind(app)
  expect(await reliefMm(app, 'left')).toBe(0)
  await app.getByLabel('speed of playing').selectOption('sixteen')
  await key(app, 'play').click()
  await expect.poll(() => reliefMm(app, 'left')).toBeGreaterThan(0.02)
  const perSecond = await picturesPerSecond(app, 1500)
  info.annotations.push({
    type: 'pictures a second',
    description: `${perSecond.toFixed(1)} on ${await rendererOf(app)}`,
  })
  expect(perSecond).toBeGreaterThan(LEAST_PER_SECOND)
  await key(app, 'pause').click()
  await seekSweep(app, 5)
  const early = await momentSlider(app).getAttribute('aria-valuetext')
  const earlyGlass = await glass(app).locator('.grind-now-line').getAttribute('points')
  await seekSweep(app, 60)
  expect(await momentSlider(app).getAttribute('aria-valuetext')).not.toBe(early)
  await seekSweep(app, 5)
  expect(await momentSlider(app).getAttribute('aria-valuetext')).toBe(early)
  expect(await glass(app).locator('.grind-now-line').getAttribute('points')).toBe(earlyGlass)
})

test('one sweep on and back, by keys and by the keyboard', async ({ app }) => {
  await openGrind(app)
  await key(app, 'sweep on').click()
  await expect(app.getByTestId('sweep')).toHaveText('1')
  await momentSlider(app).focus()
  await app.keyboard.press('ArrowRight')
  await expect(app.getByTestId('sweep')).toHaveText('2')
  await key(app, 'sweep back').click()
  await expect(app.getByTestId('sweep')).toHaveText('1')
  await expect(momentSlider(app)).toHaveAttribute(
    'aria-valuetext',
    /^sweep 1 of \d+, relief left 0\.\d\d.mm, right 0\.\d\d.mm$/,
  )
})

test('one step on and back, to an event, and back to the start', async ({ app }) => {
  await openGrind(app)
  await expect(app.getByRole('button', { name: /^relief reached|^burr all along/ }).first()).toBeVisible({
    timeout: WORKED_OUT_MS,
  })
  await key(app, 'step on').click()
  await key(app, 'step on').click()
  await expect(app.locator('[data-event="firstTouch"]')).toHaveAttribute('data-past', 'true')
  await key(app, 'step back').click()
  await key(app, 'step back').click()
  await expect(key(app, 'step back')).toBeDisabled()
  await app.locator('[data-event="burrAllAlong"]').click()
  await expect(app.locator('[data-event="burrAllAlong"]')).toHaveAttribute('data-past', 'true')
  await expect(key(app, 'step back')).toBeEnabled()
  await app.getByLabel('speed of playing').selectOption('eighth')
  await key(app, 'start again').click()
  await expect(app.getByTestId('sweep')).toHaveText('0')
  await expect(key(app, 'step back')).toBeDisabled()
  await expect(app.getByLabel('speed of playing')).toHaveValue('normal')
})

test('@long typing turns and dragging a stop screw change the prediction and begin the grind again', async ({
  app,
}) => {
  await openGrind(app)
  await seekSweep(app, 20)
  const before = await glass(app).getAttribute('aria-label')
  await turns(app, 'left').fill('1/2')
  await turns(app, 'left').press('Enter')
  await expect(app.getByTestId('sweep')).toHaveText('0')
  await expect(glass(app)).not.toHaveAttribute('aria-label', before ?? '')
  await expect(app.getByText(/Ready to grind/).first()).toBeVisible()
  const typed = await glass(app).getAttribute('aria-label')

  const ring = app.getByRole('slider', { name: 'right stop screw' })
  const box = await ring.boundingBox()
  if (!box) throw new Error('no handle on the right stop')
  await app.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  await app.mouse.down()
  await app.mouse.move(box.x + 70, box.y, { steps: 4 })
  await expect(app.getByText('Wheel stopped while you set the stops')).toBeVisible()
  await app.mouse.up()
  await expect(app.getByText('Wheel stopped while you set the stops')).toBeHidden()
  await expect(turns(app, 'right')).not.toHaveValue('2.00')
  await expect.poll(() => glass(app).getAttribute('aria-label')).not.toBe(typed)
})

test('a figure that cannot be is refused at its field, and the last good ones stay', async ({ app }) => {
  await openGrind(app)
  await expect(glass(app)).toHaveAttribute('aria-label', /Predicted.*Measured/, { timeout: WORKED_OUT_MS })
  const before = await glass(app).getAttribute('aria-label')
  await turns(app, 'left').fill('99')
  await turns(app, 'left').press('Enter')
  await expect(turns(app, 'left')).toHaveAttribute('aria-invalid', 'true')
  expect(await glass(app).getAttribute('aria-label')).toBe(before)
})

test('lifted, the ink is there to look at, wheel stopped', async ({ app }) => {
  await openGrind(app)
  await seekSweep(app, 30)
  await key(app, 'lift').click()
  await expect(app.getByText('Stop the wheel, then look')).toBeVisible()
  await expect(app.getByText('lifted: nothing touches')).toBeVisible()
  await expectStill(app)
  await takePicture(app, 'grind-lifted')
  await key(app, 'lower').click()
  await expect(app.getByText('Stop the wheel, then look')).toBeHidden()
})

test('looks right in light and dark, and in a smaller window', async ({ app }) => {
  await openGrind(app)
  await seekSweep(app, 60)
  await expectStill(app)
  await expectGoodLooks(app, 'grind')
  await app.setViewportSize({ width: 1280, height: 800 })
  await drawn(app)
  await takePicture(app, 'grind-1280')
  // The whole bevel with what is said of it is in sight, and what is laid out covers nothing of the model.
  const bottomPx = async (selector: string) => {
    const box = await app.locator(selector).boundingBox()
    return box ? box.y + box.height : Number.NaN
  }
  expect(await bottomPx('[data-testid="bevel-band"]')).toBeLessThanOrEqual(await bottomPx('.grind-views'))
  await key(app, 'Save').click()
  await expect(key(app, 'Save the picture')).toBeVisible()
  const [panel, stage] = [
    await app.locator('.grind-panel').boundingBox(),
    await app.locator('.grind-stage').boundingBox(),
  ]
  expect(panel?.x).toBeGreaterThanOrEqual((stage?.x ?? Number.NaN) + (stage?.width ?? Number.NaN) - 1)
})

test('without WebGL it says so, and edge, figures, run and every handle still work by keys, mouse and typing', async ({
  app,
}) => {
  await app.addInitScript(() => {
    const get = HTMLCanvasElement.prototype.getContext
    HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
      return kind.startsWith('webgl') ? null : (get as (...all: unknown[]) => unknown).call(this, kind, ...rest)
    } as typeof get
  })
  await app.reload()
  await openGrind(app)
  await expect(app.getByText(/cannot draw the machine in three dimensions/)).toBeVisible()
  await seekSweep(app, 20)
  expect(await reliefMm(app, 'right')).toBeGreaterThan(0)
  await expectAxeClean(app)

  const slider = (name: string) => app.getByRole('slider', { name, exact: true })
  const undo = app.getByRole('banner').getByRole('button', { name: 'Undo' })
  const names = [
    'finger reach',
    'left stop screw',
    'right stop screw',
    'bar to wheel, surface to surface',
    'projection',
  ]
  for (const name of names) {
    const before = await slider(name).inputValue()
    const words = await slider(name).getAttribute('aria-valuetext')
    for (const pressed of ['ArrowRight', 'ArrowRight', 'ArrowLeft']) await slider(name).press(pressed)
    await slider(name).blur()
    expect(Number(await slider(name).inputValue()), name).toBeGreaterThan(Number(before))
    await undo.click()
    await expect(slider(name)).toHaveAttribute('aria-valuetext', words ?? '')
  }
  const stop = slider('left stop screw')
  const box = await stop.boundingBox()
  if (!box) throw new Error('no slider of the left stop')
  await app.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  await app.mouse.down()
  await expect(app.getByText('Wheel stopped while you set the stops')).toBeVisible()
  await app.mouse.up()
  await expect(stop).toHaveAttribute('aria-valuetext', /^6.turns, 4.80.mm free play$/)
  await undo.click()
  await expect(stop).toHaveValue('1')
  const typed = app.getByRole('spinbutton', { name: 'projection', exact: true })
  await typed.fill('131')
  await typed.press('Enter')
  await expect(slider('projection')).toHaveValue('131')
  await expect(app.getByTestId('sweep')).toHaveText('0')
  await slider('load place').press('End')
  await expect(slider('load place')).toHaveAttribute('aria-valuetext', /^26.mm right of the middle$/)
  await expect(app.getByText(/^Made by hand/).first()).toBeVisible()
})

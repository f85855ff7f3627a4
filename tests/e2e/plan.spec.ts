import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, test } from '../support/app.ts'

/** A report takes a second or two on a slow machine. */
const SOLVED = { timeout: 30_000 }

const answer = (app: Page) => app.getByRole('region', { name: 'The answer' })
const relief = (app: Page) => app.getByLabel("relief in the blade's plane")

const plan = async (app: Page, tool: RegExp): Promise<void> => {
  await app.getByRole('row', { name: tool }).click()
  await app.getByRole('button', { name: 'Plan this iron' }).click()
  await expect(answer(app)).toBeVisible(SOLVED)
}

/** A relief of 0.3 is typed and sent, and the host does not keep it until it is let go. */
const holdEdit = async (app: Page): Promise<() => void> => {
  let letGo = (): void => undefined
  const held = new Promise<void>((resolve) => {
    letGo = resolve
  })
  await app.route('**/call', async (route) => {
    if (route.request().postDataJSON().name === 'job.edit') await held
    await route.continue()
  })
  await relief(app).fill('0.3')
  await relief(app).press('Enter')
  return () => letGo()
}

test('from a tool in the rack to the free play in two entries', async ({ app }) => {
  await plan(app, /Low-angle jack iron 57/)
  await expect(answer(app)).toContainText('free play each side', SOLVED)
  await expect(answer(app)).toContainText(/\d\.\d\d\smm/)
})

test('the stops are set by one key, and the undo in the message takes it back', async ({ app }) => {
  await plan(app, /Low-angle jack iron 57/)
  await answer(app).getByRole('button', { name: 'Use these stops' }).click()
  await expect(answer(app)).toContainText('The stops of this job are set so.')
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(answer(app).getByRole('button', { name: 'Use these stops' })).toBeVisible(SOLVED)
})

test('the key that sets the stops is in sight without scrolling', async ({ app }) => {
  await app.setViewportSize({ width: 1440, height: 900 })
  await plan(app, /Smoothing iron, fine/)
  const key = app.getByRole('button', { name: 'Use these stops' })
  await expect(key).toBeInViewport({ ratio: 1, timeout: SOLVED.timeout })
})

test('a smaller relief asks for less free play', async ({ app }) => {
  await plan(app, /Low-angle jack iron 57/)
  const play = async () =>
    Number(/(\d+\.\d\d)\smm/.exec((await answer(app).locator('.figure-found').textContent()) ?? '')?.[1])
  const before = await play()
  await relief(app).fill('10 thou')
  await relief(app).press('Enter')
  // 10 x 0.0254 = 0.254.
  await expect(relief(app)).toHaveValue('0.254')
  await expect.poll(play, SOLVED).toBeLessThan(before * 0.7)
})

test('a figure that cannot be read stays at its field with the reason, the last good answer stays', async ({ app }) => {
  await plan(app, /Low-angle jack iron 57/)
  const before = await answer(app).textContent()
  await relief(app).fill('1.000,5')
  await relief(app).press('Enter')
  await expect(relief(app)).toHaveAttribute('aria-invalid', 'true')
  await expect(relief(app)).toHaveAccessibleDescription(/can be read in two ways/)
  expect(await answer(app).textContent()).toBe(before)
  await relief(app).press('Escape')
  await expect(relief(app)).toHaveValue('0.50')
  await expect(relief(app)).toHaveAttribute('aria-invalid', 'false')
})

test('what is typed while the figure before it is still being kept stays, and is kept after it', {
  tag: '@http',
}, async ({ app }) => {
  await plan(app, /Low-angle jack iron 57/)
  const letGo = await holdEdit(app)
  await relief(app).fill('0.4')
  letGo()
  await expect(app.getByTestId('status')).toContainText('is changed')
  await expect(relief(app)).toHaveValue('0.4')
  await relief(app).press('Enter')
  await expect(relief(app)).toHaveValue('0.40')
  await app.getByRole('button', { name: 'Undo this' }).click()
  await expect(relief(app)).toHaveValue('0.30')
})

test('a figure that cannot be, typed while the one before it is still being kept, stays with its reason', {
  tag: '@http',
}, async ({ app }) => {
  await plan(app, /Low-angle jack iron 57/)
  const letGo = await holdEdit(app)
  await relief(app).fill('99')
  await relief(app).press('Enter')
  letGo()
  await expect(app.getByTestId('status')).toContainText('is changed')
  await expect(relief(app)).toHaveValue('99')
  await expect(relief(app)).toHaveAttribute('aria-invalid', 'true')
  await relief(app).press('Escape')
  await expect(relief(app)).toHaveValue('0.30')
})

test('a radius no edge can follow is refused at the field, the last good answer stays', async ({ app }) => {
  await plan(app, /Low-angle jack iron 57/)
  await app.getByLabel('radius', { exact: true }).check()
  const radius = app.getByLabel('radius of the edge')
  // 28.5 x 28.5 / (2 x 0.5) + 0.5 / 2 = 812.5.
  await expect(radius).toHaveValue(/^81[23]$/)
  const before = await app.getByRole('img', { name: /edge magnified/ }).getAttribute('aria-label')
  await radius.fill('20')
  await radius.press('Enter')
  await expect(radius).toHaveAccessibleDescription(/more than half the width/)
  await expect(app.getByText('The figures shown are the last good ones.')).toBeVisible()
  await expect(app.getByRole('img', { name: /edge magnified/ })).toHaveAttribute('aria-label', before ?? '')
  await radius.fill('900')
  await radius.press('Enter')
  await expect(radius).toHaveAttribute('aria-invalid', 'false')
  await expect(app.getByText('The figures shown are the last good ones.')).toBeHidden()
})

test('common practice is offered by purpose and taken in one touch', async ({ app }) => {
  await plan(app, /Smoothing iron, fine/)
  await expect(app.getByText('Common practice')).toBeVisible()
  await app.getByRole('button', { name: 'Plan it for usual work' }).click()
  await expect(app.getByLabel('camber as the wood sees it')).toHaveValue('0.06')
  await expect(app.getByRole('button', { name: 'Plan it for usual work' })).toBeHidden()
})

test('the curve is said by shaving width and by ridges, shown at two seats, and a schedule brings the edge nearer', async ({
  app,
}) => {
  await plan(app, /Low-angle jack iron 57/)
  await expect(app.getByRole('region', { name: 'The same curve at two seats' })).toContainText(/times as much/)
  await expect(app.getByRole('region', { name: 'How sure, and what it costs' })).toContainText(
    /free play is known to 0\.\d\d/,
  )
  await expect(app.getByRole('region', { name: 'Angles' })).toContainText(/pitch .* clearance 12\.0°/)
  await app.getByRole('radio', { name: 'shaving width' }).check()
  await app.getByLabel('shaving as wide as').fill('40')
  await app.getByLabel('shaving as wide as').press('Enter')
  await expect(app.getByLabel('shaving as wide as')).toHaveValue('40.0', SOLVED)
  await app.getByRole('radio', { name: 'dead square' }).check()
  await expect(answer(app)).toContainText('straight and square', SOLVED)
  await app.getByRole('radio', { name: 'shaving width' }).check()
  await expect(app.getByLabel('shaving as wide as')).toHaveValue('40.0', SOLVED)
  await app.getByRole('radio', { name: 'relief', exact: true }).check()
  await relief(app).fill('0.5')
  await relief(app).press('Enter')
  await expect(answer(app)).toContainText(/asks for 0\.50\smm/, SOLVED)
  const schedule = app.getByRole('region', { name: 'Nearer to the curve' })
  await schedule.getByRole('button', { name: 'Look for more settings' }).click()
  await expect(schedule).toContainText(/2 settings: at most 0\.0\d\d\smm off the curve/, SOLVED)
  await schedule.getByRole('button', { name: 'Use 2 settings' }).click()
  await expect(schedule).toContainText('This job does so.')
  await expect(answer(app)).toContainText('2 settings', SOLVED)
  // An answer to another question is none, and is said to be.
  await relief(app).fill('0.4')
  await relief(app).press('Enter')
  await expect(schedule).toContainText('The job was changed since these settings were looked for')
  await expect(schedule).not.toContainText('off the curve')
})

test('freshening asks for the band to leave, and the header says so', async ({ app }) => {
  await plan(app, /Low-angle jack iron 57/)
  await app.getByLabel('Freshen').check()
  await expect(app.getByLabel('band to leave')).toHaveValue('0.4')
  await expect(app.getByRole('region', { name: 'Tool in hand' })).toContainText('Freshen')
  await app.getByRole('button', { name: 'Have the stops follow it' }).click()
  await expect(app.getByText('The plan follows the curve that is there.')).toBeVisible(SOLVED)
  await expect(relief(app)).toHaveValue('0.02')
})

test('by keyboard alone from the rack to stops that are set', async ({ app }) => {
  await app.getByRole('grid').locator('tbody tr').first().focus()
  for (let row = 0; row < 5; row++) await app.keyboard.press('ArrowDown')
  await app.keyboard.press('Enter')
  const use = answer(app).getByRole('button', { name: 'Use these stops' })
  await expect(use).toBeVisible(SOLVED)
  for (let stop = 0; stop < 30 && !(await use.evaluate((key) => key === document.activeElement)); stop++) {
    await app.keyboard.press('Tab')
  }
  await expect(use).toBeFocused()
  await app.keyboard.press('Enter')
  await expect(answer(app)).toContainText('The stops of this job are set so.')
})

test('arrow keys step a figure and Enter keeps it', async ({ app }) => {
  await plan(app, /Low-angle jack iron 57/)
  await relief(app).press('ArrowDown')
  await relief(app).press('ArrowDown')
  await expect(relief(app)).toHaveValue('0.48')
  await relief(app).press('Enter')
  await expect(app.getByTestId('status')).toContainText('is changed')
  await expect(app.getByRole('img', { name: /Wanted relief 0.48/ })).toBeVisible(SOLVED)
})

test('looks right in light and dark, good and refused', async ({ app }) => {
  await plan(app, /Low-angle jack iron 57/)
  await expectGoodLooks(app, 'plan')
  await relief(app).fill('abc')
  await relief(app).press('Enter')
  await expect(relief(app)).toHaveAttribute('aria-invalid', 'true')
  await expectGoodLooks(app, 'plan-refused')
})

import type { Page } from '@playwright/test'
import { budgets } from '../budgets.ts'
import { expect, expectAxeClean, test } from '../support/app.ts'
import { openGrind } from '../support/grindPage.ts'

const openDrawn = async (app: Page): Promise<void> => {
  await openGrind(app)
  await expect(canvas(app)).toHaveAttribute('data-draw-calls', /\d/)
}

const canvas = (app: Page) => app.getByRole('application')
const calls = async (app: Page): Promise<number> => Number(await canvas(app).getAttribute('data-draw-calls'))
const still = (app: Page) => expect(canvas(app)).toHaveAttribute('data-still', 'true')

test('@long three looks in both themes, each within the calls a picture may take; layers go and come back', async ({
  app,
}) => {
  await openDrawn(app)
  await app.getByRole('button', { name: 'Look', exact: true }).click()
  for (const colorScheme of ['dark', 'light'] as const) {
    await app.emulateMedia({ colorScheme })
    for (const look of ['dark', 'lines, for paper', 'as at the bench']) {
      await app.getByText(look, { exact: true }).click()
      await expect(app.getByRole('radio', { name: look })).toBeChecked()
      await still(app)
      expect(await calls(app)).toBeGreaterThan(10)
      expect(await calls(app)).toBeLessThan(budgets.drawCalls)
    }
  }
  await expect(canvas(app)).toHaveAttribute('data-parts', 'wheel fixture bar blade marks shadow')
  const all = await calls(app)
  await app.getByRole('checkbox', { name: 'fixture' }).uncheck()
  await app.getByRole('checkbox', { name: /^fingers/ }).check()
  await app.getByRole('checkbox', { name: 'figures and leaders' }).uncheck()
  await expect(canvas(app)).toHaveAttribute('data-parts', 'wheel bar blade marks fingers shadow')
  await expect.poll(() => calls(app)).toBeLessThan(all)
  await expect(app.locator('.scene-label')).toHaveCount(0)
  await app.getByRole('checkbox', { name: 'fixture' }).check()
  await app.getByRole('checkbox', { name: 'figures and leaders' }).check()
  await expect.poll(() => calls(app)).toBeGreaterThan(all)
  await expect(app.locator('.scene-label').first()).toBeVisible()
  await expectAxeClean(app)
})

test('graphics lost: it is said, nothing of the grind is lost, and the picture comes back by itself or by a key', async ({
  app,
}) => {
  await openDrawn(app)
  await app.getByRole('button', { name: 'sweep on', exact: true }).click()
  await expect(app.getByTestId('sweep')).toHaveText('1')
  const again = app.getByRole('button', { name: 'try the picture again' })
  const lose = (givenBack: boolean) =>
    canvas(app).evaluate((element, back) => {
      const extension = (element as HTMLCanvasElement).getContext('webgl2')?.getExtension('WEBGL_lose_context')
      extension?.loseContext()
      if (back) setTimeout(() => extension?.restoreContext(), 700)
    }, givenBack)
  for (const byItself of [false, true]) {
    await lose(byItself)
    await expect(app.getByText(/graphics of this window stopped/)).toBeVisible()
    await expect(canvas(app)).toBeHidden()
    await expect(app.getByRole('spinbutton', { name: 'left stop screw' })).toBeVisible()
    if (!byItself) await again.click()
    await expect(again).toBeHidden()
    await expect(canvas(app)).toBeVisible()
    await expect(canvas(app)).toHaveAttribute('data-draw-calls', /[1-9]\d/)
    await expect(app.getByTestId('sweep')).toHaveText('1')
  }
})

test('while nothing changes nothing is drawn', async ({ app }) => {
  await openDrawn(app)
  await still(app)
  const drawnIn = (ms: number) =>
    app.evaluate(async (span) => {
      let count = 0
      const { prototype } = WebGL2RenderingContext
      const draw = prototype.drawElements
      prototype.drawElements = function (this: WebGL2RenderingContext, ...all: Parameters<typeof draw>) {
        count++
        return draw.apply(this, all)
      }
      await new Promise((done) => setTimeout(done, span))
      prototype.drawElements = draw
      return count
    }, ms)
  await app.waitForTimeout(300)
  expect(await drawnIn(600)).toBe(0)
  const [drawn] = await Promise.all([drawnIn(600), app.getByRole('button', { name: 'sweep on', exact: true }).click()])
  expect(drawn).toBeGreaterThan(0)
})

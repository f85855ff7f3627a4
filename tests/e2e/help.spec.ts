import type { Page } from '@playwright/test'
import { expect, expectAxeClean, takePicture, test } from '../support/app.ts'

const sheet = (app: Page) => app.getByRole('dialog', { name: 'Help' })
const walk = (app: Page) => app.getByRole('region', { name: 'A walk round the screens' })

/** The first start of a data folder, on which nobody was shown round. */
const asNew = async (app: Page): Promise<void> => {
  await app.route('**/call', async (route) => {
    if (route.request().postDataJSON().name !== 'workshop.get') return route.fallback()
    const answer = await route.fetch()
    const { value } = await answer.json()
    return route.fulfill({ json: { ok: true, value: { ...value, tourSeen: false } } })
  })
  await app.reload()
}

test('help opens on the part that is shown, finds over all of it, leads to an entry and to its place; a message leads to it', async ({
  app,
}) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('link', { name: 'Set up' }).click()
  await app.getByRole('link', { name: 'Squareness' }).click()
  // Even while a field is written in.
  await app.getByRole('spinbutton').first().focus()
  await app.keyboard.press('F1')
  await expect(sheet(app).getByRole('heading', { level: 3 }).first()).toHaveText('Set up, squareness')
  await takePicture(app, 'help')
  await expectAxeClean(app)
  const find = sheet(app).getByRole('searchbox', { name: 'Search help' })
  await expect(find).toBeFocused()
  await app.keyboard.type('restsOn')
  await expect(sheet(app).getByRole('status')).toHaveText('1 entry found.')
  await app.keyboard.press('Tab')
  await app.keyboard.press('Enter')
  const heading = sheet(app).getByRole('heading', { name: /The straightedge rested on a corner/ })
  await expect(heading).toBeFocused()
  await expect(heading).toBeInViewport()
  await expect(sheet(app).getByText('Press on neither corner.')).toBeVisible()
  await sheet(app).getByRole('button', { name: 'About' }).click()
  await expect(sheet(app).getByText(/^The rack that is open: .*demo\.db$/)).toBeVisible()
  await sheet(app).getByRole('button', { name: 'Show the reports' }).click()
  await expect(app.getByRole('dialog', { name: 'Reports of faults' })).toBeVisible()
  await expect(sheet(app)).toBeHidden()
  await app.keyboard.press('Escape')
  await app.keyboard.press('F1')
  await find.fill('stocktake')
  await sheet(app)
    .getByRole('button', { name: /^Rack, stocktake/ })
    .click()
  await sheet(app).getByRole('button', { name: 'Go there: Rack, stocktake' }).click()
  await expect(sheet(app)).toBeHidden()
  await expect(app).toHaveURL(/#rack\/[^/]+\/stocktake$/)
  while (!(await app.getByTestId('status').getByText('There is nothing to take back.').isVisible())) {
    await app.getByRole('button', { name: 'Undo', exact: true }).click()
    await expect(app.getByTestId('status')).not.toBeEmpty()
  }
  await app.getByRole('button', { name: 'More on this' }).click()
  await expect(sheet(app).getByRole('heading', { name: 'There is nothing to take back.', exact: true })).toBeFocused()
})

test('the walk round is offered once, goes by keys from the rack to what was learnt, and can be had again', async ({
  app,
}) => {
  await asNew(app)
  const seen = app.waitForRequest((request) => request.postData()?.includes('"workshop.toured"') ?? false)
  await app.getByRole('button', { name: 'Show me round' }).click()
  await seen
  await expect(app.getByText('New here?')).toBeHidden()
  const pointed = app.locator('[data-pointed-at]')
  for (const [title, at] of [
    ['Begin at the rack', /#rack/],
    ['Say what the wood should see', /#plan/],
    ['Place bar and blade', /#set-up/],
    ['Watch it before you do it', /#grind/],
    ['Measure what came of it', /#measure\/[^/]+$/],
  ] as const) {
    await expect(walk(app).getByRole('heading', { name: title })).toBeFocused()
    await expect(app).toHaveURL(at)
    // Past Back, which the first step cannot do, to Next.
    if (title !== 'Begin at the rack') await app.keyboard.press('Tab')
    await app.keyboard.press('Tab')
    await app.keyboard.press('Enter')
  }
  await expect(walk(app).getByRole('heading', { name: 'Let it learn' })).toBeFocused()
  await expect(pointed).toHaveClass(/learnt-head/)
  await expectAxeClean(app)
  await app.keyboard.press('Escape')
  await expect(walk(app)).toBeHidden()
  await expect(pointed).toHaveCount(0)
  await app.keyboard.press('F1')
  await sheet(app).getByRole('button', { name: 'Show me round the screens' }).click()
  await expect(walk(app).getByRole('heading', { name: 'Begin at the rack' })).toBeFocused()
})

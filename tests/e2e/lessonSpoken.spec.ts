import type { Page } from '@playwright/test'
import { lessons } from '../lessons/support.ts'
import { expect, test } from '../support/app.ts'
import { openLesson } from '../support/lessonWalk.ts'

const freePlay = lessons.find(({ id }) => id === 'free-play') as (typeof lessons)[number]

/** What is said of the model, a line a sentence. */
const said = (app: Page) => app.getByRole('region', { name: 'The scene in words' }).getByRole('listitem')

const lineOf = async (app: Page, begins: string): Promise<string> =>
  (await said(app).filter({ hasText: begins }).textContent()) ?? ''

/** Notes when the words were renewed, from now on: several lines renewed at once are one time. */
const watchWords = (app: Page): Promise<void> =>
  app.evaluate(() => {
    const list = document.querySelector('.teach-model section.unseen ul')
    const times: number[] = []
    const told: string[] = []
    Object.assign(window, { renewedMs: times, told })
    const watch = new MutationObserver(() => {
      times.push(performance.now())
      told.push(list?.textContent ?? '')
    })
    if (list) watch.observe(list, { childList: true, subtree: true, characterData: true })
  })

const renewedMs = (app: Page): Promise<number[]> =>
  app.evaluate(() => (window as unknown as { renewedMs: number[] }).renewedMs)

test('while a lesson’s grind runs its words in figures and units keep up, and nobody is talked over', {
  tag: ['@long'],
}, async ({ app }) => {
  await app.emulateMedia({ reducedMotion: 'no-preference' })
  await openLesson(app, freePlay)
  await app.getByRole('button', { name: 'Next' }).click()
  await expect(said(app).filter({ hasText: 'Touching: nothing yet.' })).toHaveCount(1)
  expect(await lineOf(app, 'Relief:')).toMatch(/left 0\.00\smm, right 0\.00\smm/)
  expect(await lineOf(app, 'Ink left:')).toMatch(/100\s%.*100\s%.*100\s%/)
  const list = app.locator('.teach-model section.unseen ul')
  await watchWords(app)
  await app.getByRole('button', { name: 'That is my answer' }).click()
  await expect(list).toHaveAttribute('aria-live', 'off')
  await expect(app.locator('.teach-ask').getByRole('status').first()).toContainText('The wheel answers…')
  await expect.poll(() => lineOf(app, 'Touching:'), { intervals: [50] }).toMatch(/Touching: \d+\smm of the edge, from/)
  await expect(app.locator('.teach-verdict')).toBeVisible({ timeout: 60_000 })
  await expect(list).toHaveAttribute('aria-live', 'polite')
  await expect.poll(() => lineOf(app, 'Relief:')).toMatch(/left 0\.55\smm, right 0\.55\smm/)
  expect(await lineOf(app, 'Ink left:')).toMatch(/ 0\s%.* 0\s%.* 0\s%/)
  const times = await renewedMs(app)
  const told = await app.evaluate(() => (window as unknown as { told: string[] }).told)
  expect(
    told.filter((words) => /left 0\.[1-4]\d\smm/.test(words)),
    'on the way, neither the start nor the end',
  ).not.toEqual([])
  const apart = times.slice(1).map((at, i) => at - (times[i] as number))
  // At most one in three seconds while it plays; the last comes when it stops.
  expect(apart.slice(0, -1).filter((ms) => ms < 2900)).toEqual([])
  await expect(app.locator('.teach-ask').getByRole('status').first()).toContainText(/You said|At most/)
})

import type { Page } from '@playwright/test'
import { lessons } from '../lessons/support.ts'
import { expect, test } from '../support/app.ts'
import { openLesson } from '../support/lessonWalk.ts'

const seat = lessons.find(({ id }) => id === 'the-seat') as (typeof lessons)[number]

/** What somebody else does meanwhile, in another window. */
const call = (app: Page, name: string, input: object): Promise<unknown> =>
  app.evaluate(
    async ([what, given]) => {
      const body = JSON.stringify({ callId: crypto.randomUUID(), name: what, input: given })
      const answer = await fetch('/call', { method: 'POST', headers: { 'content-type': 'application/json' }, body })
      return (await answer.json()).value
    },
    [name, input] as const,
  )

/** On a rack of one's own: who goes for good could not be put back for the tests that follow. */
test('whoever learns is taken out for good in the middle of a lesson: it is said, and the lesson goes on for nobody', {
  tag: ['@long', '@http'],
}, async ({ app }) => {
  await app.getByRole('button', { name: 'Start my own rack' }).click()
  const people = app.getByRole('region', { name: 'People' })
  await people.getByRole('button', { name: 'Add a person' }).click()
  await app.getByRole('dialog').getByLabel('Name').fill('Wren Oddly')
  await app.getByRole('dialog').getByRole('button', { name: 'Save' }).click()
  await app.getByRole('link', { name: 'Teach', exact: true }).click()
  await app.getByLabel('Who learns').selectOption({ label: 'Wren Oddly' })
  await openLesson(app, seat)
  await app.getByRole('button', { name: 'Next', exact: true }).click()
  const [{ id, version }] = (await call(app, 'person.list', {})) as [{ id: string; version: number }]
  await call(app, 'person.purge', { id, version, inNotes: true, copies: 'keep' })
  await app.getByLabel('Your guess').fill('0.35')
  await app.getByRole('button', { name: 'That is my answer' }).click()
  await expect(app.locator('.teach-verdict')).toContainText('Near enough')
  await expect(app.getByTestId('status')).toContainText('no longer among the workshop’s people')
  await app.getByRole('button', { name: 'Next', exact: true }).click()
  await expect(app.getByRole('heading', { name: 'A plane with a low seat' })).toBeVisible()
  await app.getByRole('button', { name: 'Leave it here' }).click()
  await expect(app.getByLabel('Who learns')).toHaveText(/nobody in particular/)
})

test('the iron that a class looks at is deleted meanwhile: both windows say so, and lessons stay as they are', {
  tag: ['@long', '@http'],
}, async ({ app }) => {
  await app.getByRole('row', { name: /Low-angle jack iron 57/ }).click()
  await app.getByRole('link', { name: 'Teach', exact: true }).click()
  await app.getByRole('link', { name: 'Class view' }).click()
  const opened = app.waitForEvent('popup')
  await app.getByRole('button', { name: 'Open the class view' }).click()
  const wall = await opened
  await app.getByRole('link', { name: 'Grind', exact: true }).click()
  await expect(wall.getByRole('region', { name: 'Now' })).toBeVisible()
  const found = (await call(app, 'tool.find', {})) as { tools: { id: string; version: number; code: string }[] }
  const tool = found.tools.find(({ code }) => code === '06')
  await call(app, 'tool.remove', { id: tool?.id, version: tool?.version })
  await expect(wall.getByText('Open a lesson, or an iron on Grind')).toBeVisible()
  await expect(app.locator('.grind-stage')).toHaveCount(0)
  await openLesson(app, seat)
  await expect(wall.getByRole('heading', { name: 'The wood looks along the sole' })).toBeVisible()
  await wall.close()
})

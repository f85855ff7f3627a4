import type { Locator, Page } from '@playwright/test'
import { expect } from './app.ts'

/** One errand of somebody at work: everything it opens is shut again, everything it changes taken back. */
type Errand = (app: Page) => Promise<void>

/** A hand that knows its way: ten times as quick as one that reads, which does something every three seconds. */
const BETWEEN_MS = 300
/** Longest until a busy machine answers. */
const ANSWER_MS = 30_000

const pause = (app: Page): Promise<void> => app.waitForTimeout(BETWEEN_MS)
const press = async (app: Page, what: Locator): Promise<void> => {
  await what.click({ timeout: ANSWER_MS })
  await pause(app)
}
const go = (app: Page, screen: string): Promise<void> =>
  press(app, app.getByRole('link', { name: screen, exact: true }))
/** What was just said to be done, and nothing that was done before. */
const undo = (app: Page): Promise<void> => press(app, app.getByRole('button', { name: 'Undo this' }))
const row = (app: Page, name: RegExp) => app.getByRole('row', { name }).first()
const key = (app: Page, name: string | RegExp) => app.getByRole('button', { name, exact: true })
const sheet = (app: Page) => app.getByRole('dialog')
const take = async (app: Page, name: RegExp): Promise<void> => {
  await go(app, 'Rack')
  await press(app, row(app, name))
}

const JACK = /low-angle jack iron 57/i

const find: Errand = async (app) => {
  await go(app, 'Rack')
  for (const words of ['jack', 'till', 'nothing of the kind', '']) {
    await app.getByRole('searchbox').fill(words)
    await pause(app)
  }
  await expect(row(app, JACK)).toBeVisible({ timeout: ANSWER_MS })
}

const editTool: Errand = async (app) => {
  await take(app, /Fore iron/)
  await press(app, key(app, 'Edit'))
  await sheet(app).getByLabel('Maker').fill('Forge at Nether Loom')
  await press(app, sheet(app).getByRole('button', { name: 'Save' }))
  await expect(sheet(app)).toHaveCount(0, { timeout: ANSWER_MS })
  await undo(app)
}

const honed: Errand = async (app) => {
  await take(app, /Try plane iron/)
  await press(app, key(app, 'Honed'))
  await undo(app)
}

const plan: Errand = async (app) => {
  await take(app, JACK)
  await go(app, 'Plan')
  const relief = app.getByLabel("relief in the blade's plane")
  await relief.fill('0.4')
  await relief.press('Enter')
  await pause(app)
  await undo(app)
}

const setUp: Errand = async (app) => {
  await take(app, JACK)
  await go(app, 'Set up')
  const projection = app.getByLabel('projection, bar axis to edge')
  await projection.fill('128')
  await projection.press('Enter')
  await pause(app)
  await undo(app)
}

const grind: Errand = async (app) => {
  await take(app, JACK)
  await go(app, 'Grind')
  const moment = app.getByRole('slider', { name: 'Moment of the grind' })
  await moment.waitFor({ timeout: ANSWER_MS })
  await moment.press('Home')
  for (const shortcut of ['Space', 'Space', '.', ',', '?', 'Escape']) {
    await app.keyboard.press(shortcut)
    await pause(app)
  }
  await moment.fill('60')
  await pause(app)
  await press(app, app.getByRole('button', { name: /^large/i }).first())
  await app.keyboard.press('Escape')
  await pause(app)
}

const measure: Errand = async (app) => {
  await take(app, JACK)
  await go(app, 'Measure')
  for (const [name, leaf] of [
    ['left corner', '0.5'],
    ['halfway, if taken', '0.12'],
    ['right corner', '0.5'],
  ] as const) {
    await app.getByLabel(name, { exact: true }).fill(leaf)
    await app.keyboard.press('Tab')
  }
  await press(app, key(app, /^Keep it as/))
  await undo(app)
}

const lesson: Errand = async (app) => {
  await go(app, 'Teach')
  await press(app, key(app, 'Fingers: the same stops, another edge'))
  await app.getByRole('radio').first().check({ timeout: ANSWER_MS })
  await press(app, key(app, 'That is my answer'))
  await app.locator('.teach-verdict').waitFor({ timeout: ANSWER_MS })
  await press(app, key(app, 'To the lessons'))
}

const card: Errand = async (app) => {
  await take(app, JACK)
  await press(app, key(app, 'Job card'))
  await expect(app.getByTestId('status')).toContainText('The job card is made', { timeout: ANSWER_MS })
}

const help: Errand = async (app) => {
  await app.keyboard.press('F1')
  await sheet(app).getByRole('searchbox').fill('relief')
  await press(app, sheet(app).getByRole('button', { name: 'Close' }))
  await expect(sheet(app)).toHaveCount(0, { timeout: ANSWER_MS })
}

const otherUnit: Errand = async (app) => {
  await app.getByLabel('Unit for lengths').selectOption('thou')
  await pause(app)
  await app.getByLabel('Unit for lengths').selectOption('mm')
  await pause(app)
}

/** All of them, by name; between them they open every screen. */
export const errands: Readonly<Record<string, Errand>> = {
  find,
  editTool,
  honed,
  plan,
  setUp,
  grind,
  measure,
  lesson,
  card,
  help,
  otherUnit,
}

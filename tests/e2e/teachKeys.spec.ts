import type { Locator, Page } from '@playwright/test'
import { findingsOf } from '../../geometry/lesson/findings.ts'
import { rightChoices } from '../../geometry/lesson/mark.ts'
import { lessons } from '../lessons/support.ts'
import { expect, test } from '../support/app.ts'
import { pressOn, tabTo, typeInto } from '../support/keyboard.ts'

const lesson = lessons.find(({ id }) => id === 'free-play') as (typeof lessons)[number]

const found = (k: number, seed = 0) => {
  const findings = findingsOf(lesson, k, {}, seed)
  if (!findings.ok) throw new Error(JSON.stringify(findings.problems))
  return findings.value
}

const button = (app: Page, name: string): Locator => app.getByRole('button', { name, exact: true })

const expectTold = (app: Page, right: boolean) =>
  expect(app.locator('.teach-verdict')).toHaveAttribute('data-right', String(right), { timeout: 20_000 })

/** A tenth of the way and the finest step, in hundredths of a millimetre. */
const [PAGE, STEP] = [15, 1]

/** Sets a place of the drawn edge by Page Up and the arrow. */
const drawPlace = async (app: Page, name: string, mm: number): Promise<void> => {
  await tabTo(app, app.getByRole('slider', { name, exact: true }))
  let left = Math.round(mm * 100)
  for (; left >= PAGE; left -= PAGE) await app.keyboard.press('PageUp')
  for (; left >= STEP; left -= STEP) await app.keyboard.press('ArrowUp')
}

test('a whole lesson by the keyboard alone, and the class view: an edge drawn, a screw turned on the model, a run, a check', {
  tag: ['@long'],
}, async ({ app }) => {
  await pressOn(app, app.getByRole('link', { name: 'Teach', exact: true }))
  await pressOn(app, button(app, lesson.title))
  await expect(app.getByRole('heading', { name: 'What the stops do' })).toBeFocused()
  await pressOn(app, button(app, 'Next'))
  await expect(app.getByRole('heading', { name: 'Draw what you expect' })).toBeFocused()
  await pressOn(app, button(app, 'That is my answer'))
  await expectTold(app, false)
  await expect(app.getByRole('region', { name: 'Question' })).toBeFocused()
  await pressOn(app, button(app, 'Try once more'))
  const { edgeMm } = found(1)
  const foremost = Math.min(...(edgeMm ?? []))
  for (const [k, name] of ['left corner', 'halfway left', 'middle', 'halfway right', 'right corner'].entries())
    await drawPlace(app, name, (edgeMm?.[k] ?? 0) - foremost)
  await pressOn(app, button(app, 'That is my answer'))
  await expectTold(app, true)
  await tabTo(app, button(app, 'play'))
  await pressOn(app, button(app, 'start again'))
  await pressOn(app, button(app, 'sweep on'))
  await expect(app.locator('.grind-sentence')).toContainText('Paused at sweep 1')
  await pressOn(app, button(app, 'Next'))

  await typeInto(app, app.getByLabel('Your guess'), '9')
  await app.keyboard.press('Enter')
  await expectTold(app, false)
  await pressOn(app, button(app, 'Try once more'))
  const ask = lesson.steps[2]?.ask
  const is = ask?.kind === 'predict' ? found(2, 1).values[ask.figure]?.value : null
  await typeInto(app, app.getByLabel('Your guess'), (is ?? 0).toFixed(3))
  await app.keyboard.press('Enter')
  await expectTold(app, true)
  await pressOn(app, button(app, 'Next'))

  const screw = (side: string) => app.getByRole('slider', { name: `${side} stop screw`, exact: true })
  for (const side of ['left', 'right']) {
    await tabTo(app, screw(side))
    for (let turns = 0.5; turns < 1.24; turns += 0.05) await app.keyboard.press('ArrowUp')
    await expect(app.locator('.teach-move').getByRole('spinbutton', { name: `stop, ${side}` })).toHaveValue('1.25')
  }
  await pressOn(app, button(app, 'Check it'))
  await expectTold(app, true)
  await pressOn(app, button(app, 'Next'))

  const last = lesson.steps[4]?.ask
  const [right = 0] = last?.kind === 'choose' ? rightChoices(last, found(4).values) : []
  await tabTo(app, app.getByRole('radio').first())
  await app.keyboard.press('Space')
  for (let k = 0; k < right; k++) await app.keyboard.press('ArrowDown')
  await pressOn(app, button(app, 'A hint'))
  await pressOn(app, button(app, 'That is my answer'))
  await expectTold(app, true)
  await pressOn(app, button(app, 'Finish'))
  await expect(app.getByRole('heading', { name: `${lesson.title}: done` })).toBeFocused()
  await pressOn(app, button(app, 'To the lessons'))
  await expect(button(app, lesson.title)).toBeFocused()

  await pressOn(app, app.getByRole('link', { name: 'Class view' }))
  const opened = app.waitForEvent('popup')
  await pressOn(app, button(app, 'Open the class view'))
  await expect((await opened).getByText('Open a lesson, or an iron on Grind')).toBeVisible()
})

test('a lesson is written, tried and kept by the keyboard alone', { tag: ['@long'] }, async ({ app }) => {
  await pressOn(app, app.getByRole('link', { name: 'Teach', exact: true }))
  await pressOn(app, app.getByRole('link', { name: 'Write a lesson' }))
  await tabTo(app, app.getByLabel('Begin from'))
  await app.keyboard.type('Why')
  await pressOn(app, button(app, 'Begin a copy of it'))
  await expect(app.getByRole('region', { name: 'The lesson' })).toBeFocused()
  await typeInto(app, app.getByLabel('Title'), 'Our boards')
  await pressOn(app, button(app, 'Add a step'))
  await typeInto(app, app.getByLabel('Heading'), 'Ours')
  await typeInto(app, app.getByLabel('What is said, a paragraph a line'), 'The shaving is {{shavingMm}} thick.')
  await pressOn(app, app.getByRole('checkbox', { name: 'the wood' }), 'Space')
  await tabTo(app, app.getByRole('radio', { checked: true }).first())
  await expect(app.getByText('Nothing is wrong with it.')).toBeVisible()
  await pressOn(app, button(app, 'Earlier'))
  await pressOn(app, button(app, 'Later'))
  await pressOn(app, button(app, 'Try it'))
  await expect(app.getByRole('heading', { name: 'A straight edge' })).toBeFocused()
  await pressOn(app, app.getByRole('link', { name: 'Write a lesson' }))
  await pressOn(app, button(app, 'Keep it'))
  await expect(app.getByText('The lesson Our boards is kept.')).toBeVisible()
  await pressOn(app, button(app, 'Undo this'))
  await expect(app.getByLabel('Begin from').getByRole('option', { name: 'Our boards' })).toHaveCount(0)
})

import type { Page } from '@playwright/test'
import { type Findings, findingsOf } from '../../geometry/lesson/findings.ts'
import type { Change, Lesson, LessonStep } from '../../geometry/lesson/lesson.ts'
import { rightChoices } from '../../geometry/lesson/mark.ts'
import { quantityOfPlace } from '../../geometry/lesson/state.ts'
import { createTexts } from '../../main/texts.ts'
import { ways } from '../lessons/support.ts'
import { expect } from './app.ts'

const t = createTexts().t

/** Longest that the engine takes for a step on a busy machine. */
const AT_WORK_MS = 20_000

/** @param seed of the other figures that a question is asked with again */
const found = (lesson: Lesson, k: number, seed = 0): Findings => {
  const result = findingsOf(lesson, k, {}, seed)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

const nameOf = (place: string): string => {
  if (place.startsWith('bench.strokes')) return t(`teach:bench.${place.split('.')[1]}`)
  const name = t(`quantities:${quantityOfPlace(place)}.name`)
  return place.startsWith('second.') ? t('teach:second', { name }) : name
}

/** Types what is to be moved into the fields of a step. */
const moveTo = async (app: Page, way: Change): Promise<void> => {
  const moves = app.getByRole('group', { name: t('teach:moves') })
  for (const [place, value] of Object.entries(way)) {
    const field = moves.getByRole('spinbutton', { name: nameOf(place), exact: true })
    await field.fill(String(value))
    await field.press('Enter')
  }
}

const verdict = (app: Page) => app.locator('.teach-verdict')

const answer = (app: Page) => app.getByRole('button', { name: t('teach:answer') })

const expectVerdict = async (app: Page, right: boolean): Promise<void> => {
  await expect(verdict(app)).toHaveAttribute('data-right', String(right), { timeout: AT_WORK_MS })
  await expect(verdict(app)).not.toContainText('{{')
}

const again = (app: Page) => app.getByRole('button', { name: t('teach:again') }).click()

const choose = async (app: Page, ask: Extract<LessonStep['ask'], { kind: 'choose' }>, findings: Findings) => {
  const [right = -1] = rightChoices(ask, findings.values)
  for (const choice of [(right + 1) % ask.choices.length, right]) {
    await app.locator('.teach-choices').getByRole('radio').nth(choice).check()
    await answer(app).click()
    await expectVerdict(app, choice === right)
    if (choice !== right) await again(app)
  }
}

/** A guess that is told comes back with other figures where the lesson has them: what was told is no answer to it. */
const predict = async (app: Page, ask: Extract<LessonStep['ask'], { kind: 'predict' }>, lesson: Lesson, k: number) => {
  const say = async (value: number, right: boolean) => {
    await app.getByLabel(t('teach:guess')).fill(String(Number(value.toFixed(6))))
    await answer(app).click()
    await expectVerdict(app, right)
  }
  const figure = (findings: Findings) => findings.values[ask.figure]?.value ?? Number.NaN
  const is = figure(found(lesson, k))
  await say(is + 3 * Math.max(ask.within, ask.share * Math.abs(is)), false)
  await again(app)
  await say(figure(found(lesson, k, lesson.varied.length > 0 ? 1 : 0)), true)
}

const draw = async (app: Page, { edgeMm }: Findings) => {
  const places = ['left', 'halfwayLeft', 'middle', 'halfwayRight', 'right'] as const
  const foremost = Math.min(...(edgeMm ?? []))
  await answer(app).click()
  await expectVerdict(app, false)
  await again(app)
  for (const [k, place] of places.entries())
    await app.getByRole('slider', { name: t(`teach:draw.${place}`) }).fill(((edgeMm?.[k] ?? 0) - foremost).toFixed(2))
  await answer(app).click()
  await expectVerdict(app, true)
}

const reach = async (app: Page, way: Change) => {
  const check = app.getByRole('button', { name: t('teach:check') })
  await check.click({ timeout: AT_WORK_MS })
  await expectVerdict(app, false)
  await again(app)
  await moveTo(app, way)
  await check.click({ timeout: AT_WORK_MS })
  await expectVerdict(app, true)
}

/** Answers a step's question wrong, then right. */
export const answerStep = async (app: Page, lesson: Lesson, k: number): Promise<void> => {
  const { ask } = lesson.steps[k] as LessonStep
  if (ask?.kind === 'choose') await choose(app, ask, found(lesson, k))
  if (ask?.kind === 'predict') await predict(app, ask, lesson, k)
  if (ask?.kind === 'draw') await draw(app, found(lesson, k))
  if (ask?.kind === 'reach') await reach(app, ways[`${lesson.id}/${k}`] ?? {})
}

/** Opens a lesson from the list. */
export const openLesson = async (app: Page, { title }: Lesson): Promise<void> => {
  await app.getByRole('link', { name: 'Teach', exact: true }).click()
  await app.getByRole('button', { name: title, exact: true }).click()
}

/** Looks at a step, before its question is answered or after. */
type Look = (answered: boolean) => Promise<void>

/** Goes through a lesson from its open step to its end, every question answered wrong, then right. */
export const walkLesson = async (app: Page, lesson: Lesson, look: Look): Promise<void> => {
  for (const k of lesson.steps.keys()) {
    await expect(app.locator('.teach-words > p').first()).toContainText(
      t('teach:step', { step: k + 1, steps: lesson.steps.length }),
    )
    await look(false)
    await answerStep(app, lesson, k)
    await look(true)
    const last = k === lesson.steps.length - 1
    await app.getByRole('button', { name: t(last ? 'teach:finish' : 'teach:next'), exact: true }).click()
  }
  const asked = lesson.steps.filter(({ ask }) => ask !== null).length
  await expect(app.getByText(t('teach:end.right', { count: asked, of: asked }))).toBeVisible()
}

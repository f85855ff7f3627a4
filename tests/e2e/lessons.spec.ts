import { lessons } from '../lessons/support.ts'
import { test as base, expect, expectAxeClean } from '../support/app.ts'
import { openLesson, walkLesson } from '../support/lessonWalk.ts'

/** Without graphics the model stands in flat drawings, which is all that these walks need, and quick. */
const withoutGraphics = () => {
  const real = HTMLCanvasElement.prototype.getContext
  HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
    return kind.startsWith('webgl') ? null : real.call(this, kind as '2d', ...(rest as []))
  } as typeof real
}

const test = base.extend({
  page: async ({ page }, use) => {
    await page.addInitScript(withoutGraphics)
    await use(page)
  },
})

test.describe.configure({ mode: 'parallel' })

/** A lesson that asks in every way there is. */
const EVERY_WAY = 'free-play'

/** Walked at every commit; the others, among them one that asks in every way, are walked by `test:long`. */
const WALKED = ['wheel-and-hands', 'why-a-curve']

for (const lesson of lessons) {
  const long = !WALKED.includes(lesson.id)
  test(`lesson ${lesson.id} is done to its end, wrong answers and right ones`, { tag: long ? ['@long'] : [] }, async ({
    app,
  }) => {
    await openLesson(app, lesson)
    await walkLesson(app, lesson, async (answered) => {
      if (long || (answered && lesson.id === EVERY_WAY)) await expectAxeClean(app)
    })
    await app.getByRole('button', { name: 'To the lessons' }).click()
    await expect(app.getByRole('listitem').filter({ hasText: lesson.title })).toContainText('done on')
  })
}

const walked = lessons.filter(({ id }) => WALKED.includes(id))

for (const [name, colorScheme, width] of [
  ['as it comes', 'light', 1440],
  ['dark and in a narrow window', 'dark', 640],
] as const)
  test(`nothing is wrong with any step of the lessons walked first, ${name}`, { tag: ['@long'] }, async ({ app }) => {
    await app.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
    await app.setViewportSize({ width, height: 900 })
    for (const lesson of walked) {
      await openLesson(app, lesson)
      await walkLesson(app, lesson, () => expectAxeClean(app))
      await app.getByRole('button', { name: 'To the lessons' }).click()
    }
  })

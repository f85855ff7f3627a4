import AxeBuilder from '@axe-core/playwright'
import { test as base, expect, type Page } from '@playwright/test'
import { collectErrors } from './pageErrors.ts'
import { type Program, programs } from './program.ts'

interface AppFixtures {
  /** Errors the page may write to its console in this test; any other fails it. */
  readonly allowedErrors: readonly RegExp[]
  /** Whether the page reads screens ahead that nobody opened, when it has nothing to do: a tenth of all the tests' time. */
  readonly readsAhead: boolean
  /** The program, open and let in, on a demo workshop as it comes. */
  readonly app: Page
}

export interface WorkerOptions {
  /** What the program runs on: the same tests hold on both. */
  readonly on: keyof typeof programs
}

interface WorkerFixtures extends WorkerOptions {
  /** One program and one profile for all tests of a worker, which puts its workshop back between them: starting them costs a second. */
  readonly program: Program
}

/** In the page: it never has nothing to do. */
const neverIdle = (): void => {
  window.requestIdleCallback = () => 0
}

/** `test` with the program as a fixture: `test('…', async ({ app }) => { … })`. */
export const test = base.extend<AppFixtures, WorkerFixtures>({
  allowedErrors: [[], { option: true }],
  on: ['loopback', { option: true, scope: 'worker' }],
  program: [
    async ({ browser, on }, use) => {
      const program = await programs[on](browser)
      await use(program)
      await program.stop()
    },
    { scope: 'worker' },
  ],
  readsAhead: [false, { option: true }],
  page: async ({ program, viewport, readsAhead }, use) => {
    const page = await program.newPage()
    if (!readsAhead) await page.addInitScript(neverIdle)
    if (viewport) await page.setViewportSize(viewport)
    await use(page)
    await program.endTest(page)
  },
  app: async ({ page, program, allowedErrors }, use) => {
    const errors = collectErrors(page)
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' })
    await page.goto(await program.freshAddress(page))
    await page.getByRole('banner').waitFor()
    await use(page)
    expect(errors.filter((error) => !allowedErrors.some((allowed) => allowed.test(error)))).toEqual([])
  },
})

/** What axe finds in colours; everything else is the same in both looks. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'] as const

/** Fails on anything that axe finds wrong with the page as it stands, and prints which rule and where. */
export const expectAxeClean = async (page: Page, rules: readonly string[] = []): Promise<void> => {
  // One page without frames: the way through a page of its own, and lists of what passes, cost four times as long.
  const runOnly = rules.length > 0 ? { runOnly: { type: 'rule' as const, values: [...rules] } } : {}
  const axe = new AxeBuilder({ page }).setLegacyMode(true).options({ resultTypes: ['violations'], ...runOnly })
  const { violations } = await axe.analyze()
  const found = violations.map(({ id, help, nodes }) => `${id}: ${help}\n  ${nodes.map((n) => n.html).join('\n  ')}`)
  expect(found).toEqual([])
}

/** Settles once the next change of a setting is kept: it shows before. */
export const settingKept = (page: Page): Promise<unknown> =>
  page.waitForResponse((response) => response.request().postData()?.includes('"settings.edit"') ?? false)

/** Waits until what has changed is in the picture: one frame to lay it out, one to draw it. */
export const drawn = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))))

/** Puts a picture of the screen where it can be looked at. */
export const takePicture = async (page: Page, name: string): Promise<void> => {
  await drawn(page)
  await page.screenshot({ path: `test-results/screens/${name}.png` })
}

/** The screen as it stands, in light and in dark: a picture of each, and clean for axe in each. */
export const expectGoodLooks = async (page: Page, name: string): Promise<void> => {
  await page.emulateMedia({ colorScheme: 'dark' })
  await takePicture(page, `${name}-dark`)
  await expectAxeClean(page, COLOUR_RULES)
  await page.emulateMedia({ colorScheme: 'light' })
  await takePicture(page, `${name}-light`)
  await expectAxeClean(page)
}

export { expect }

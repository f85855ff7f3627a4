import AxeBuilder from '@axe-core/playwright'
import { type BrowserContext, test as base, expect, type Page } from '@playwright/test'
import { type HostProcess, startHostProcess } from './hostProcess.ts'
import { collectErrors } from './pageErrors.ts'

interface AppFixtures {
  /** Errors the page may write to its console in this test; any other fails it. */
  readonly allowedErrors: readonly RegExp[]
  /** The program, open and let in, on a demo workshop as it comes. */
  readonly app: Page
}

interface WorkerFixtures {
  /** One host for all tests of a worker, which puts its workshop back between them: starting one costs a second. */
  readonly host: HostProcess
  /** One profile for all tests of a worker, emptied between them: making one costs a quarter of a second. */
  readonly profile: BrowserContext
}

/** Closes every window of a profile and forgets what they kept. */
const empty = async (profile: BrowserContext): Promise<void> => {
  for (const page of profile.pages()) await page.close()
  await profile.clearCookies()
}

/** `test` with the program as a fixture: `test('…', async ({ app }) => { … })`. */
export const test = base.extend<AppFixtures, WorkerFixtures>({
  allowedErrors: [[], { option: true }],
  host: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads which fixtures are needed from this pattern.
    async ({}, use) => {
      const host = await startHostProcess()
      await use(host)
      await host.stop()
    },
    { scope: 'worker' },
  ],
  profile: [
    async ({ browser }, use) => {
      const profile = await browser.newContext()
      await use(profile)
      await profile.close()
    },
    { scope: 'worker' },
  ],
  page: async ({ profile, viewport }, use) => {
    const page = await profile.newPage()
    if (viewport) await page.setViewportSize(viewport)
    await use(page)
    await empty(profile)
  },
  app: async ({ page, host, allowedErrors }, use) => {
    const errors = collectErrors(page)
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' })
    await page.goto(await host.freshAddress())
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

import AxeBuilder from '@axe-core/playwright'
import { test as base, expect, type Page } from '@playwright/test'
import { type HostProcess, startHostProcess } from './hostProcess.ts'

/** The two looks of every screen. */
export const themes = ['light', 'dark'] as const
export type Theme = (typeof themes)[number]

interface AppFixtures {
  /** Follows the system's look, which this sets; `test.use({ theme: 'dark' })`. */
  readonly theme: Theme
  /** Errors the page may write to its console in this test; any other fails it. */
  readonly allowedErrors: readonly RegExp[]
  /** A loopback host with a demo workshop of its own. */
  readonly host: HostProcess
  /** The program, open and let in, on that host. */
  readonly app: Page
}

/** Everything the page reports as an error: exceptions, refusals of the content policy, failed requests. */
const collectErrors = (page: Page): string[] => {
  const errors: string[] = []
  page.on('pageerror', (error) => errors.push(error.stack ?? error.message))
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(`${message.text()} ${message.location().url}`.trim())
  })
  return errors
}

/** `test` with the program as a fixture: `test('…', async ({ app }) => { … })`. */
export const test = base.extend<AppFixtures>({
  theme: ['light', { option: true }],
  allowedErrors: [[], { option: true }],
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads which fixtures are needed from this pattern.
  host: async ({}, use) => {
    const host = await startHostProcess()
    await use(host)
    await host.stop()
  },
  app: async ({ page, host, theme, allowedErrors }, use) => {
    const errors = collectErrors(page)
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
    await page.goto(host.startAddress)
    await use(page)
    expect(errors.filter((error) => !allowedErrors.some((allowed) => allowed.test(error)))).toEqual([])
  },
})

/** Fails on anything that axe finds wrong with the page as it stands, and prints which rule and where. */
export const expectAxeClean = async (page: Page): Promise<void> => {
  const { violations } = await new AxeBuilder({ page }).analyze()
  const found = violations.map(({ id, help, nodes }) => `${id}: ${help}\n  ${nodes.map((n) => n.html).join('\n  ')}`)
  expect(found).toEqual([])
}

/** One test for each look, named after it. */
export const testInBothThemes = (title: string, run: (app: Page, theme: Theme) => Promise<void>): void => {
  for (const theme of themes) {
    test.describe(theme, () => {
      test.use({ theme })
      test(title, ({ app }) => run(app, theme))
    })
  }
}

export { expect }

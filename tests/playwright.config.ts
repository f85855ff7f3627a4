import { defineConfig } from '@playwright/test'
import type { WorkerOptions } from './support/app.ts'
import { chromiumOptions } from './support/chromium.ts'

// A workshop begins in the system's language; the tests read English wherever they run.
process.env.LC_ALL = 'en_GB.UTF-8'

/** Window of the drawn screens. */
const viewport = { width: 1440, height: 900 }

/** Long enough for a loaded two-core machine: a time-out here means hung, never slow. */
const HUNG_MS = 120_000

/**
 * Of the browser's tests, those that npm test runs in the played desktop window, too; `WINDOW=all` has it run all but those that
 * look at what passes between page and loopback host.
 */
const inWindow = process.env.WINDOW === 'all' ? /./ : /@window/

/** Rounds that `npm test` has no time for; `npm run test:long -- longBrowser` makes them. */
const tooLong = /@long/
const leftOut = process.env.LONG === undefined ? [tooLong] : []

export default defineConfig<object, WorkerOptions>({
  testDir: '.',
  projects: [
    { name: 'shell', testMatch: 'shell/**/*.spec.ts' },
    { name: 'loopback', testMatch: 'e2e/**/*.spec.ts', grepInvert: leftOut, use: { on: 'loopback' } },
    {
      name: 'window',
      testMatch: 'e2e/**/*.spec.ts',
      grep: inWindow,
      grepInvert: [/@http/, ...leftOut],
      use: { on: 'window' },
    },
  ],
  // The built program runs as it was built.
  build: { external: ['**/out/**'] },
  outputDir: '../test-results',
  workers: 2,
  fullyParallel: false,
  forbidOnly: process.env.CI !== undefined,
  retries: 0,
  timeout: HUNG_MS,
  expect: { timeout: 10_000 },
  use: { browserName: 'chromium', viewport, launchOptions: chromiumOptions(), screenshot: 'only-on-failure' },
})

import { defineConfig } from '@playwright/test'
import { chromiumOptions } from './support/chromium.ts'

/** Window of the drawn screens. */
const viewport = { width: 1440, height: 900 }

/** Long enough for a loaded two-core machine: a time-out here means hung, never slow. */
const HUNG_MS = 120_000

export default defineConfig({
  testDir: '.',
  testMatch: ['e2e/**/*.spec.ts', 'shell/**/*.spec.ts'],
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

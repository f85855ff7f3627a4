import { type Browser, chromium, type Page } from '@playwright/test'
import { chromiumOptions } from './chromium.ts'
import { type HostProcess, startHostProcess } from './hostProcess.ts'
import { collectErrors } from './pageErrors.ts'

/** The program in a browser, for counts that run outside the test runner. */
export interface BrowserBench {
  /** A fresh page on the demo workshop as it comes, with what it reports as errors. */
  open(): Promise<{ readonly page: Page; readonly errors: readonly string[] }>
  /** The host's process, with all its threads. */
  pid(): Promise<number>
  close(): Promise<void>
}

/** Starts host and browser at the first page, and keeps them until they are closed. */
export const browserBench = (): BrowserBench => {
  let started: Promise<{ readonly host: HostProcess; readonly browser: Browser }> | null = null
  const start = async () => ({ host: await startHostProcess(), browser: await chromium.launch(chromiumOptions()) })
  return {
    open: async () => {
      started ??= start()
      const { host, browser } = await started
      const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' })
      const errors = collectErrors(page)
      await page.goto(await host.freshAddress())
      return { page, errors }
    },
    pid: async () => (await started)?.host.pid ?? 0,
    close: async () => {
      if (!started) return
      const { host, browser } = await started
      started = null
      await browser.close()
      await host.stop()
    },
  }
}

import type { Page } from '@playwright/test'

/** Everything the page reports as an error: exceptions, refusals of the content policy, failed requests. */
export const collectErrors = (page: Page): string[] => {
  const errors: string[] = []
  page.on('pageerror', (error) => errors.push(error.stack ?? error.message))
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(`${message.text()} ${message.location().url}`.trim())
  })
  return errors
}

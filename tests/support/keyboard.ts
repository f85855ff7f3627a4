import type { Locator, Page } from '@playwright/test'
import { expect } from './app.ts'

/** Stops between two things on a screen, at most: beyond it is not reached by Tab. */
const MOST_STOPS = 120

/** Goes by Tab alone until something has the keyboard; fails where that never comes. */
export const tabTo = async (app: Page, wanted: Locator): Promise<void> => {
  await expect(wanted).toBeVisible()
  for (let stops = 0; stops < MOST_STOPS; stops++) {
    if (await wanted.evaluate((element) => element === document.activeElement)) return
    await app.keyboard.press('Tab')
  }
  throw new Error(`Tab never comes to ${wanted}`)
}

/** Goes to something and presses a key on it. */
export const pressOn = async (app: Page, wanted: Locator, key = 'Enter'): Promise<void> => {
  await tabTo(app, wanted)
  await app.keyboard.press(key)
}

/** Types into a field instead of what stands there. */
export const typeInto = async (app: Page, field: Locator, text: string): Promise<void> => {
  await tabTo(app, field)
  await app.keyboard.press('ControlOrMeta+A')
  await app.keyboard.type(text)
}

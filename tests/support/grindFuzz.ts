import type { Page } from '@playwright/test'
import { openGrind } from './grindPage.ts'
import { seeded } from './seeded.ts'

/** What is done at one seed: enough to get into a corner, few enough to find out how. */
const DEEDS = 60

const keys = [
  ...['Tab', 'Shift+Tab', 'Enter', 'Space', 'Escape', 'Backspace', 'Home', 'End', 'PageUp', 'PageDown'],
  ...['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Control+z', 'Delete'],
  ...['l', 'v', 'r', '?', '.', ',', '+', '-', '2', '4', '5', '0', 'n', '/'],
]

const sizes = [
  { width: 1440, height: 900 },
  { width: 640, height: 900 },
  { width: 1000, height: 420 },
  { width: 320, height: 640 },
]

/** A hand that does not know what it does, the same for the same seed. */
const handOf = (seed: number, page: Page) => {
  const chance = seeded(seed)
  const pick = <T>(of: readonly T[]): T => of[Math.floor(chance() * of.length)] as T
  const place = (): readonly [number, number] => {
    const { width, height } = page.viewportSize() ?? (sizes[0] as (typeof sizes)[0])
    return [Math.floor(chance() * width), Math.floor(chance() * height)]
  }
  const press = async (): Promise<string> => {
    const key = pick(keys)
    await page.keyboard.press(key)
    return key
  }
  const click = async (): Promise<string> => {
    const at = place()
    await page.mouse.click(...at, { clickCount: chance() < 0.2 ? 2 : 1 })
    return `click ${at}`
  }
  const drag = async (): Promise<string> => {
    const [from, to] = [place(), place()]
    await page.mouse.move(...from)
    await page.mouse.down()
    await page.mouse.move(...to, { steps: 4 })
    // Now and then it is given up on the way.
    if (chance() < 0.2) await page.keyboard.press('Escape')
    await page.mouse.up()
    return `drag ${from} to ${to}`
  }
  const roll = async (): Promise<string> => {
    await page.mouse.move(...place())
    await page.mouse.wheel(0, Math.floor(chance() * 800) - 400)
    return 'wheel'
  }
  const resize = async (): Promise<string> => {
    const size = pick(sizes)
    await page.setViewportSize(size)
    return `window ${size.width} x ${size.height}`
  }
  const deeds = [press, press, press, press, click, click, drag, drag, roll]
  return { act: (): Promise<string> => (chance() < 0.02 ? resize() : pick(deeds)()) }
}

/** Grind, or why it cannot be shown, is on the screen; from wherever the hand has gone. */
const backToGrind = async (page: Page): Promise<void> => {
  for (let k = 0; k < 2; k++) await page.keyboard.press('Escape')
  if (page.url().includes('#grind')) return
  // By its address: the hand may have chosen another language.
  await page.locator('a[href^="#grind"]').first().click({ timeout: 10_000 })
}

/** Whether a screen says that it has met something it cannot show, in whatever language. */
const isBroken = async (page: Page): Promise<boolean> => (await page.locator('.page-note[role="alert"]').count()) > 0

const isAlive = async (page: Page): Promise<boolean> => {
  await page.reload()
  const shown = page.locator('.grind-screen, .grind-empty, .page-note')
  await shown.first().waitFor({ timeout: 30_000 })
  return !(await isBroken(page))
}

/** Lets the hand loose on Grind. @returns what went wrong, with what was done before it; null: nothing */
export const faultOnGrind = async (seed: number, page: Page, errors: readonly string[]): Promise<string | null> => {
  const done: string[] = []
  try {
    await openGrind(page)
    const hand = handOf(seed, page)
    while (done.length < DEEDS && errors.length === 0) {
      done.push(await hand.act())
      if (!page.url().includes('#grind')) await backToGrind(page)
    }
    if (errors.length === 0 && (await isBroken(page))) return `broken after ${done.join(', ')}`
    if (errors.length > 0) return `${errors.join('; ')} after ${done.join(', ')}`
    await backToGrind(page)
    return (await isAlive(page)) ? null : `the job does not open again after ${done.join(', ')}`
  } catch (error) {
    return `${error instanceof Error ? error.message : error} after ${done.join(', ')}`
  }
}

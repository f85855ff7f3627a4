import type { Page } from '@playwright/test'
import { browserBench } from '../support/browserBench.ts'
import { dragAlong, type KeptUp, keptUp, watchPage } from '../support/dragProbe.ts'
import { openGrind, seekSweep } from '../support/grindPage.ts'
import { picturesPerSecond, rendererOf } from '../support/pictures.ts'
import { about, inMs, median, type Row } from './clock.ts'

/** Handles of the machine, with the way that each is drawn along (px). */
const handles = {
  'right stop screw': [60, 0],
  projection: [14, 40],
  'bar to wheel, surface to surface': [0, -30],
  'finger reach': [40, -10],
  // The blade itself: for as long as it is held it grinds.
  'load place': [-30, 4],
} as const

/** After this rest the still picture is drawn, at its sharpest (ms). */
const REST_MS = 1500

const most = (values: readonly number[]): number => Math.max(0, ...values)

/** A drag, from the first movement until before it is let go. */
const drag = async (page: Page, name: string, way: readonly [number, number]): Promise<KeptUp> => {
  await page.waitForTimeout(REST_MS)
  await watchPage(page)
  await dragAlong(page, page.getByRole('slider', { name, exact: true }), way)
  const found = await keptUp(page)
  await page.keyboard.press('Escape')
  await page.mouse.up()
  return found
}

/** The pointer goes over the picture with nothing held: what a movement costs that changes nothing. */
const idleMs = async (page: Page): Promise<number> => {
  await page.waitForTimeout(REST_MS)
  await watchPage(page)
  for (let k = 0; k < 60; k++) await page.mouse.move(60 + k, 400)
  return median((await keptUp(page)).paintMs)
}

const rowOf = (name: string, { paintMs, longTasksMs, scriptsMs }: KeptUp, nothingMs: number): Row => ({
  what: `${name} dragged: from a movement to its picture, the middle one of ${paintMs.length}`,
  took: `${inMs(median(paintMs))} (at most ${inMs(most(paintMs))}; ${longTasksMs.length} tasks over 50 ms, the longest ${inMs(most(longTasksMs))}, the program's own part of one at most ${inMs(most(scriptsMs))})`,
  against: `${about(median(paintMs) / nothingMs)} times a movement with nothing held (${inMs(nothingMs)})`,
})

const PLAYED_MS = 3000

/** Pictures a second while the grind plays, beside how often the window could have been drawn at rest. */
const playing = async (page: Page): Promise<Row> => {
  // As most people have it: with motion.
  await page.emulateMedia({ reducedMotion: 'no-preference' })
  await page.waitForTimeout(REST_MS)
  const atRest = await picturesPerSecond(page, 1000)
  await page.getByRole('button', { name: 'play', exact: true }).click()
  const played = await picturesPerSecond(page, PLAYED_MS)
  await page.getByRole('button', { name: 'pause', exact: true }).click()
  return {
    what: `pictures a second while a grind plays, on ${await rendererOf(page)}`,
    took: played.toFixed(1),
    against: `${about(played / atRest)} of the window at rest (${atRest.toFixed(1)})`,
  }
}

/** Grind opened for the first time in a window: the tasks that hold it up. */
const opening = async (page: Page): Promise<Row> => {
  await watchPage(page)
  const startMs = performance.now()
  await openGrind(page)
  await page.locator('.scene-overlay[data-placed]').waitFor()
  const tookMs = performance.now() - startMs
  const { longTasksMs, scriptsMs } = await keptUp(page)
  const sumMs = longTasksMs.reduce((sum, ms) => sum + ms, 0)
  return {
    what: 'Grind opened, until its figures stand round the model',
    took: `${inMs(tookMs)} (${longTasksMs.length} tasks over 50 ms, the longest ${inMs(most(longTasksMs))}, the program's own part of one at most ${inMs(most(scriptsMs))})`,
    against: `${about(sumMs / tookMs)} of it in such tasks`,
  }
}

/** The moving model under the hand, in a browser whose graphics the processor draws. */
export const movingRows = async (): Promise<readonly Row[]> => {
  const bench = browserBench()
  try {
    const { page } = await bench.open()
    const opened = await opening(page)
    await seekSweep(page, 20)
    const nothingMs = await idleMs(page)
    const rows: Row[] = [opened]
    for (const [name, way] of Object.entries(handles)) rows.push(rowOf(name, await drag(page, name, way), nothingMs))
    rows.push(await playing(page))
    return rows
  } finally {
    await bench.close()
  }
}

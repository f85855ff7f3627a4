import type { Page } from '@playwright/test'
import { expect } from './app.ts'

/** Longest that a run takes to be worked out on a busy machine. */
export const WORKED_OUT_MS = 30_000

/** Takes the low-angle jack iron from the rack and goes to Grind. */
export const openGrind = async (app: Page): Promise<void> => {
  await app
    .getByRole('row', { name: /low-angle jack/i })
    .first()
    .click()
  await app.getByRole('link', { name: 'Grind', exact: true }).click()
  await expect(momentSlider(app)).toBeVisible()
}

export const momentSlider = (app: Page) => app.getByRole('slider', { name: 'Moment of the grind' })

/** Waits until the grind stands at this sweep. */
export const expectSweep = (app: Page, sweep: number): Promise<void> =>
  expect(app.getByTestId('sweep')).toHaveText(String(sweep), { timeout: WORKED_OUT_MS })

/** Goes to a sweep by the slider and waits until the picture is there. */
export const seekSweep = async (app: Page, sweep: number): Promise<void> => {
  await momentSlider(app).fill(String(sweep))
  await expectSweep(app, sweep)
}

/** What a page still holds that Grind has used: workers running, and canvases that nothing shows any more. */
export interface Held {
  readonly workers: number
  readonly strayCanvases: number
  /** Memory in use by scripts, after what nobody needs was cleared away. */
  readonly heapMb: number
}

/** Clears away what nobody needs, and counts the rest. */
export const heldBy = async (app: Page): Promise<Held> => {
  const devtools = await app.context().newCDPSession(app)
  await devtools.send('HeapProfiler.collectGarbage')
  const { result } = await devtools.send('Runtime.evaluate', { expression: 'HTMLCanvasElement.prototype' })
  const { objects } = await devtools.send('Runtime.queryObjects', { prototypeObjectId: result.objectId as string })
  const stray = await devtools.send('Runtime.callFunctionOn', {
    objectId: objects.objectId as string,
    functionDeclaration: 'function () { return this.filter((canvas) => !canvas.isConnected).length }',
    returnByValue: true,
  })
  const { usedSize } = await devtools.send('Runtime.getHeapUsage')
  await devtools.detach()
  return { workers: app.workers().length, strayCanvases: Number(stray.result.value), heapMb: usedSize / 2 ** 20 }
}

/** Opens Grind and goes back to the rack, so many times. */
export const openAndClose = async (app: Page, times: number): Promise<void> => {
  for (let k = 0; k < times; k++) {
    await app.getByRole('link', { name: 'Grind', exact: true }).click()
    await expect(app.getByRole('application')).toBeVisible()
    await app.getByRole('link', { name: 'Rack', exact: true }).click()
    await expect(app.getByRole('grid')).toBeVisible()
  }
}

import type { Locator, Page } from '@playwright/test'

/** How a window kept up with what was done in it. */
export interface KeptUp {
  /** From each movement of the pointer until the picture after it was handed over (ms). */
  readonly paintMs: readonly number[]
  /** Tasks over 50 ms, the program's and the engine's together (ms). */
  readonly longTasksMs: readonly number[]
  /** Of each frame that took longer than 50 ms, what the program's own scripts took (ms); the rest is drawing. */
  readonly scriptsMs: readonly number[]
}

interface Probe {
  paintMs: number[]
  longTasksMs: number[]
  scriptsMs: number[]
}

type ProbedWindow = Window & { keptUp: Probe }

/** Begins to watch a page; what was found before is forgotten. Movements are no part of event timing, so they are timed here: from the event's own stamp. */
export const watchPage = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const probed = window as unknown as ProbedWindow
    const begun = probed.keptUp !== undefined
    probed.keptUp = { paintMs: [], longTasksMs: [], scriptsMs: [] }
    if (begun) return
    window.addEventListener(
      'pointermove',
      ({ timeStamp }) =>
        requestAnimationFrame(() => {
          // A message comes after the picture that this frame draws.
          const { port1, port2 } = new MessageChannel()
          port1.onmessage = () => probed.keptUp.paintMs.push(performance.now() - timeStamp)
          port2.postMessage(null)
        }),
      true,
    )
    const each = (type: string, take: (entry: PerformanceEntry) => void): void =>
      new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type })
    each('longtask', ({ duration }) => probed.keptUp.longTasksMs.push(duration))
    each('long-animation-frame', (entry) => {
      const { scripts } = entry as PerformanceEntry & { readonly scripts: readonly PerformanceEntry[] }
      probed.keptUp.scriptsMs.push(scripts.reduce((sum, { duration }) => sum + duration, 0))
    })
  })

/** @returns what was found since the watching began */
export const keptUp = (page: Page): Promise<KeptUp> =>
  page.evaluate(() => structuredClone((window as unknown as ProbedWindow).keptUp))

/** Movements of one drag. */
const MOVES = 60

/** Takes hold of a ring and draws it along, a movement a time; Escape then gives it up, so that nothing is changed. */
export const dragAlong = async (page: Page, ring: Locator, [dxPx, dyPx]: readonly [number, number]): Promise<void> => {
  // Before the first picture nothing has its place.
  await page.locator('.scene-overlay[data-placed]').waitFor()
  const box = await ring.boundingBox()
  if (!box) throw new Error('there is nothing to take hold of')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  for (let k = 1; k <= MOVES; k++) await page.mouse.move(x + (dxPx * k) / MOVES, y + (dyPx * k) / MOVES)
}

import type { Page } from '@playwright/test'
import { browserBench } from '../support/browserBench.ts'
import { faultOnGrind } from '../support/grindFuzz.ts'
import { type Held, heldBy, openAndClose, openGrind } from '../support/grindPage.ts'
import type { LongCount } from './count.ts'

const fuzzBench = browserBench()

/** Keys and pointer at random on Grind: some five minutes. */
export const grindFuzz: LongCount = {
  name: 'grindFuzz',
  count: 40,
  attempt: async (seed) => {
    const { page, errors } = await fuzzBench.open()
    const fault = await faultOnGrind(seed, page, errors)
    await page.close()
    return fault
  },
  end: fuzzBench.close,
}

/** What scripts may hold more than after the first rounds (MB): what is compiled and kept as code goes on growing a little. */
const MOST_MORE_MB = 4
const CYCLES = 10

const heapBench = browserBench()
let page: Page | null = null
let first: Held | null = null

const openOnce = async (): Promise<Page> => {
  const fresh = (await heapBench.open()).page
  await openGrind(fresh)
  await fresh.getByRole('link', { name: 'Rack', exact: true }).click()
  await openAndClose(fresh, CYCLES)
  first = await heldBy(fresh)
  return fresh
}

const faultOf = (before: Held, now: Held): string | null => {
  if (now.workers > before.workers) return `${now.workers} workers, after ${before.workers}`
  if (now.strayCanvases > before.strayCanvases) return `${now.strayCanvases} canvases that nothing shows`
  const moreMb = now.heapMb - before.heapMb
  return moreMb > MOST_MORE_MB ? `${moreMb.toFixed(1)} MB more than after the first ${CYCLES} rounds` : null
}

/** Grind opened and closed two hundred times in one window: nothing is left behind. */
export const openAndCloseGrind: LongCount = {
  name: 'openAndCloseGrind',
  count: 20,
  attempt: async () => {
    page ??= await openOnce()
    await openAndClose(page, CYCLES)
    const now = await heldBy(page)
    process.stderr.write(`${now.heapMb.toFixed(1)} MB, ${now.workers} workers, ${now.strayCanvases} canvases\n`)
    return faultOf(first as Held, now)
  },
  end: heapBench.close,
}

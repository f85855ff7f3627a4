import type { Page } from '@playwright/test'

/** How often the window is drawn, over so long. */
export const picturesPerSecond = (page: Page, forMs: number): Promise<number> =>
  page.evaluate(async (ms) => {
    const stamps: number[] = []
    await new Promise<void>((done) => {
      const next = (nowMs: number): void => {
        stamps.push(nowMs)
        if (nowMs - (stamps[0] as number) < ms) requestAnimationFrame(next)
        else done()
      }
      requestAnimationFrame(next)
    })
    return (1000 * (stamps.length - 1)) / ((stamps.at(-1) as number) - (stamps[0] as number))
  }, forMs)

/** What draws the window's three-dimensional pictures. */
export const rendererOf = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const context = document.createElement('canvas').getContext('webgl2')
    const names = context?.getExtension('WEBGL_debug_renderer_info')
    return String(context?.getParameter(names?.UNMASKED_RENDERER_WEBGL ?? context.RENDERER))
  })

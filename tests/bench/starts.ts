import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { type Browser, chromium, type Page } from '@playwright/test'
import { build, isBuildStale } from '../../main/start/build.ts'
import { temporaryFolder } from '../main/support.ts'
import { chromiumOptions } from '../support/chromium.ts'
import { about, inMs, median, type Row } from './clock.ts'

const root = join(import.meta.dirname, '..', '..')
/** Odd, so that there is a middle one; what a machine does beside it strikes one or two. */
const RUNS = 11

/** What is the least that any program of this make does: Node serving a page with one key. */
const LEAST = `require('node:http').createServer((_, answer) => {
  answer.setHeader('content-type', 'text/html').end('<button onclick="this.disabled = true">key</button>')
}).listen(0, '127.0.0.1', function () { console.log('http://127.0.0.1:' + this.address().port + '/') })`

interface Started {
  readonly args: readonly string[]
  /** Does something on the page, and waits until it is done. */
  use(page: Page): Promise<void>
}

const least: Started = {
  args: ['-e', LEAST],
  use: async (page) => {
    await page.getByRole('button').click()
    await page.locator('button:disabled').waitFor()
  },
}

const ours = (dataDir: string): Started => ({
  args: [join(root, 'main', 'start.ts'), '--host', 'browser', '--address', '--data', dataDir],
  use: async (page) => {
    const row = page.getByRole('row', { name: /low-angle jack/i }).first()
    await row.click()
    await page.locator('tr[aria-selected="true"]').first().waitFor()
  },
})

const addressOf = async (child: ChildProcess): Promise<string> => {
  if (!child.stdout) throw new Error('the host has no output')
  for await (const line of createInterface({ input: child.stdout })) if (line.startsWith('http://')) return line
  throw new Error('the host ended before it printed its address')
}

/** @returns how long (ms) until the address was printed, and until what was done on the page had its effect */
const startOnce = async (browser: Browser, { args, use }: Started): Promise<readonly [number, number]> => {
  const startedMs = performance.now()
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'ignore'] })
  const address = await addressOf(child)
  const printedMs = performance.now() - startedMs
  const context = await browser.newContext()
  const page = await context.newPage()
  await page.goto(address)
  await use(page)
  const usedMs = performance.now() - startedMs
  await context.close()
  child.kill('SIGINT')
  if (child.exitCode === null) await once(child, 'exit')
  return [printedMs, usedMs]
}

/** Each in turn with the least there is, so that both meet the same machine. */
const starts = async (browser: Browser, started: () => Started) => {
  const runs: { readonly our: readonly [number, number]; readonly bare: readonly [number, number] }[] = []
  for (let k = 0; k < RUNS; k++)
    runs.push({ our: await startOnce(browser, started()), bare: await startOnce(browser, least) })
  const at = (who: 'our' | 'bare', moment: 0 | 1): number => median(runs.map((run) => run[who][moment]))
  return { printedMs: at('our', 0), usedMs: at('our', 1), bareMs: at('bare', 1) }
}

const rowOf = (what: string, { printedMs, usedMs, bareMs }: Awaited<ReturnType<typeof starts>>): Row => ({
  what: `${what}, until an iron answers a click, median of ${RUNS}`,
  took: `${inMs(usedMs)} (${inMs(printedMs)} until the host listens)`,
  against: `${about(usedMs / bareMs)} times Node serving one key (${inMs(bareMs)})`,
})

/** Starts of the built program on the loopback host, in a browser that is open already. */
export const startRows = async (): Promise<readonly Row[]> => {
  if (isBuildStale(root)) await build(root)
  const browser = await chromium.launch(chromiumOptions())
  const folders = Array.from({ length: RUNS + 1 }, () => temporaryFolder())
  const [known = '', ...fresh] = folders.map(({ folder }) => folder)
  try {
    await startOnce(browser, ours(known))
    return [
      rowOf('first start, demo workshop filled in', await starts(browser, () => ours(fresh.pop() as string))),
      rowOf('later start', await starts(browser, () => ours(known))),
    ]
  } finally {
    await browser.close()
    for (const { remove } of folders) remove()
  }
}

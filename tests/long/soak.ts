import { execFileSync } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { browserBench } from '../support/browserBench.ts'
import { seeded } from '../support/seeded.ts'
import { errands } from '../support/soakWalk.ts'
import type { LongCount } from './count.ts'

/** How long it goes on, at ten times the pace of a hand: `SOAK_MINUTES=5 npm run test:long -- soak` for a short one. */
const MINUTES = Number(process.env.SOAK_MINUTES ?? 60)
const MINUTE_MS = 60_000
const PAGE_MB = 2 ** 20

/** What is held at the end of a minute, after what nobody needs was cleared away. */
interface Sample {
  readonly minute: number
  readonly errands: number
  readonly heapMb: number
  readonly nodes: number
  readonly listeners: number
  readonly hostMb: number
}

/**
 * What may be more at the end than after the first fifth, by the straight line through the rest: scripts that go on being
 * compiled, and memory that Node keeps for later, grow a little and then no more. A leak of one errand would be hundreds of these.
 */
const MOST_MORE: Readonly<Record<'heapMb' | 'nodes' | 'listeners' | 'hostMb', number>> = {
  heapMb: 6,
  nodes: 1_500,
  listeners: 150,
  hostMb: 80,
}
/** What comes before is warming up. */
const FROM_SHARE = 0.2

const bench = browserBench()
const samples: Sample[] = []
let opened: { page: Page; errors: readonly string[] } | null = null
let done = 0

const sampleOf = async (page: Page, minute: number): Promise<Sample> => {
  const devtools = await page.context().newCDPSession(page)
  await devtools.send('HeapProfiler.collectGarbage')
  await devtools.send('Performance.enable')
  const { metrics } = await devtools.send('Performance.getMetrics')
  const { usedSize } = await devtools.send('Runtime.getHeapUsage')
  await devtools.detach()
  const metric = (name: string): number => metrics.find((each) => each.name === name)?.value ?? 0
  const hostMb =
    Number(execFileSync('ps', ['-o', 'rss=', '-p', String(await bench.pid())], { encoding: 'utf8' })) / 1024
  return {
    minute,
    errands: done,
    heapMb: usedSize / PAGE_MB,
    nodes: metric('Nodes'),
    listeners: metric('JSEventListeners'),
    hostMb,
  }
}

const growthOf = (name: keyof typeof MOST_MORE): number => {
  const rest = samples.slice(Math.floor(samples.length * FROM_SHARE))
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
  const [x, y] = [mean(rest.map(({ minute }) => minute)), mean(rest.map((sample) => sample[name]))]
  const over = rest.reduce((sum, sample) => sum + (sample.minute - x) * (sample[name] - y), 0)
  const under = rest.reduce((sum, { minute }) => sum + (minute - x) ** 2, 0)
  return under === 0 ? 0 : (over / under) * (rest.length - 1)
}

const grown = (): string | null => {
  const names = Object.keys(MOST_MORE) as (keyof typeof MOST_MORE)[]
  const growths = names.map((name) => ({ name, more: growthOf(name) }))
  const words = growths.map(({ name, more }) => `${name} ${more >= 0 ? '+' : ''}${more.toFixed(1)}`)
  process.stderr.write(`soak: over the last four fifths ${words.join(', ')}\n`)
  const over = growths.filter(({ name, more }) => more > MOST_MORE[name])
  return over.length === 0 ? null : over.map(({ name, more }) => `${name} grew by ${more.toFixed(1)}`).join(', ')
}

const curvePath = join(import.meta.dirname, '..', '..', 'out', 'soak.csv')

const writeCurve = (): void => {
  mkdirSync(join(curvePath, '..'), { recursive: true })
  const rows = samples.map((sample) => Object.values(sample).map((value) => Number(value.toFixed(2))))
  writeFileSync(curvePath, `${[Object.keys(samples[0] as Sample), ...rows].map((row) => row.join(',')).join('\n')}\n`)
}

/** @returns what went wrong within one minute of errands, each chosen at random */
const useForAMinute = async (page: Page, errors: readonly string[], minute: number): Promise<string | null> => {
  const untilMs = performance.now() + MINUTE_MS
  const chance = seeded(minute)
  const names = Object.keys(errands)
  while (performance.now() < untilMs) {
    const name = names[Math.floor(chance() * names.length)] as string
    try {
      await errands[name]?.(page)
    } catch (error) {
      return `${name}: ${error instanceof Error ? error.message.split('\n').slice(0, 3).join(' ') : error}`
    }
    if (errors.length > 0) return `${name}: ${errors.join('; ')}`
    done++
  }
  return null
}

/** One window in use for an hour: no error, and memory stays level, as `out/soak.csv` shows minute by minute. */
export const soak: LongCount = {
  name: 'soak',
  count: MINUTES,
  attempt: async (minute) => {
    opened ??= await bench.open()
    const { page, errors } = opened
    const fault = await useForAMinute(page, errors, minute)
    samples.push(await sampleOf(page, minute))
    writeCurve()
    if (fault !== null) opened = null
    return fault ?? (minute === MINUTES - 1 ? grown() : null)
  },
  end: bench.close,
}

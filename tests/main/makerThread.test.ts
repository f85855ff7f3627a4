import { afterAll, describe, expect, it } from 'vitest'
import { parseJob } from '../../geometry/parseJob.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { createMaker } from '../../main/makerThread.ts'
import { soundJob } from './commandBench.ts'
import { codesOf } from './support.ts'

const maker = createMaker()
afterAll(maker.close)

const parsed = parseJob(soundJob)
const job = parsed.ok ? parsed.value : expect.fail('the sound job is none')
/** Work for a minute, of which a test waits for none. */
const long = { ...job, motion: { ...job.motion, sweeps: 5000 }, grid: { across: 115, through: 17 } }

/** How late the thread that asks may be called back; the work itself would keep it for thousands. */
const FREE_MS = 300

describe('the maker', () => {
  it('works out what the engine works out, one after the other, and leaves its caller free', async () => {
    let latestMs = performance.now()
    let waitMs = 0
    const look = setInterval(() => {
      waitMs = Math.max(waitMs, performance.now() - latestMs)
      latestMs = performance.now()
    }, 10)
    const both = await Promise.all([maker.solveJob(job), maker.solveJob(job)])
    clearInterval(look)
    expect(both).toEqual([solveJob(job), solveJob(job)])
    expect(waitMs).toBeLessThan(FREE_MS)
  })

  it('stops in the midst of its work when told to, and goes on with the next', async () => {
    const stop = new AbortController()
    const stopped = maker.makeCard([{ job: { document: long } } as never, new Date()], stop.signal)
    const next = maker.solveJob(job)
    setTimeout(() => stop.abort(), 100)
    expect(codesOf(await stopped)).toEqual(['serviceFailed'])
    expect((await next).ok).toBe(true)
  })

  it('tells of work that could not be done, without rejecting', async () => {
    expect(codesOf(await maker.makeCard([null as never, new Date()], new AbortController().signal))).toEqual([
      'serviceFailed',
    ])
    expect((await maker.solveJob(job)).ok).toBe(true)
  })
})

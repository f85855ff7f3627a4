import { readFileSync } from 'node:fs'
import { stripTypeScriptTypes } from 'node:module'
import { expect, test } from '@playwright/test'
import type { Job } from '../../geometry/job.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { seededJobs } from '../support/seededJobs.ts'

/** Seed of the jobs, and how many. */
const SEED = 20261125
const JOBS = 200

/** An address that exists only inside this test: the engine's own files, types stripped, nothing else changed. */
const ENGINE = 'http://engine.test/'

test(`${JOBS} reports are equal to the byte in Node and Chromium, seed ${SEED}`, async ({ page }) => {
  await page.route(`${ENGINE}**`, async (route) => {
    const name = new URL(route.request().url()).pathname.slice(1)
    if (name === '') return route.fulfill({ contentType: 'text/html', body: '<!doctype html>' })
    const source = readFileSync(new URL(`../../geometry/${name}`, import.meta.url), 'utf8')
    return route.fulfill({ contentType: 'text/javascript', body: stripTypeScriptTypes(source) })
  })
  await page.goto(ENGINE)
  const jobs = seededJobs(SEED, JOBS)
  expect(jobs).toHaveLength(JOBS)
  const there = await page.evaluate(
    async ({ address, jobs }: { address: string; jobs: readonly Job[] }) => {
      const engine = (await import(`${address}solveJob.ts`)) as { solveJob: (job: Job) => unknown }
      return jobs.map((job) => JSON.stringify(engine.solveJob(job)))
    },
    { address: ENGINE, jobs },
  )
  const here = jobs.map((job) => JSON.stringify(solveJob(job)))
  expect(here.filter((text) => text.startsWith('{"ok":true')).length).toBeGreaterThan(0.9 * JOBS)
  expect(there).toEqual(here)
})

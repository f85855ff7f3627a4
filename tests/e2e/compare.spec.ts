import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, test } from '../support/app.ts'
import { openGrind, seekSweep } from '../support/grindPage.ts'

/** Longest that two runs take to be worked out on a busy machine. */
const WORKED_OUT = { timeout: 30_000 }

const openCompare = async (app: Page): Promise<void> => {
  await openGrind(app)
  await app.getByRole('button', { name: 'Compare', exact: true }).click()
}

const panel = (app: Page) => app.getByRole('region', { name: 'Compare' })
const choose = (app: Page, name: string) => app.getByLabel('compare with').selectOption(name)
const row = (app: Page, name: string) => panel(app).getByRole('row', { name: new RegExp(`^${name}`) })
const cells = (app: Page, name: string) => row(app, name).getByRole('cell').allTextContents()
const line = (app: Page, kind: string) => app.locator(`.grind-views ${kind}`).first().getAttribute('points')

test('@long a job kept and changed: both edges and their figures, at one sweep, in one glass, side by side, turned by a key', async ({
  app,
}) => {
  await openCompare(app)
  await seekSweep(app, 20)
  await app.getByRole('button', { name: 'keep this one to compare' }).click()
  const workers = app.workers().length
  await choose(app, 'kept')
  await expect(panel(app)).toContainText('Both edges are the same.', WORKED_OUT)
  await expect(row(app, 'relief left')).toContainText('the same')
  expect(app.workers()).toHaveLength(workers + 1)
  await app.getByRole('spinbutton', { name: 'turns, left' }).fill('0.5')
  await app.getByRole('spinbutton', { name: 'turns, left' }).press('Enter')
  await expect(app.getByTestId('sweep')).toHaveText('0')
  await seekSweep(app, 30)
  await expect(panel(app)).toContainText('stand at sweep 30', WORKED_OUT)
  expect(await cells(app, 'left stop, free play')).toEqual(['0.40\u00a0mm, 0.5\u00a0turn', '0.80\u00a0mm, 1\u00a0turn'])
  const [own, other] = (await cells(app, 'relief left')).map(Number.parseFloat) as [number, number]
  expect(other).toBeGreaterThan(own)
  await expect(panel(app).getByTestId('deviation')).toHaveText(/28\.5.mm left of the middle: the other is further back/)
  const [nowLine, otherLine] = [await line(app, '.grind-now-line'), await line(app, '.compare-line')]
  expect(nowLine).not.toBe(otherLine)
  await app.getByRole('button', { name: 'hold: as kept' }).focus()
  await app.keyboard.down('Space')
  await expect.poll(() => line(app, '.grind-now-line')).toBe(otherLine)
  expect(await line(app, '.compare-line')).toBe(nowLine)
  await app.keyboard.up('Space')
  await expect.poll(() => line(app, '.grind-now-line')).toBe(nowLine)
  await panel(app).getByText('side by side').click()
  await expect(panel(app).getByRole('img', { name: /^The edge, magnified/ })).toHaveCount(2)
  await expectGoodLooks(app, 'compare')
  await app.getByRole('button', { name: 'put away' }).click()
  await expect(app.locator('.compare-line')).toHaveCount(0)
  await expect.poll(() => app.workers().length, { message: 'the other run is over' }).toBe(workers)
})

test('@long another iron, its end, and what goes wrong with it: each said, the own job as it was', async ({ app }) => {
  await openCompare(app)
  await seekSweep(app, 10)
  await choose(app, '04 Bevel-up smoothing iron')
  await expect(panel(app)).toContainText('stand at sweep 10', WORKED_OUT)
  await expect(row(app, 'width')).toContainText('57.0\u00a0mm')
  const own = await cells(app, 'relief left')
  // What was measured of the iron in hand says nothing of the other.
  await panel(app).getByText('side by side').click()
  await expect(app.locator('.compare-beside .grind-now-line')).toHaveCount(2)
  await expect(app.locator('.compare-beside .grind-measured')).toHaveCount(1)
  await panel(app).getByText('in one glass').click()
  // The worker that grinds the other is lost.
  await app.evaluate(() => {
    window.Worker = class extends Worker {
      constructor(address: string | URL, options?: WorkerOptions) {
        super(address, options)
        Object.assign(window, { newest: this })
      }
    }
  })
  await choose(app, 'nothing')
  await choose(app, '04 Bevel-up smoothing iron')
  await expect(panel(app)).toContainText('stand at sweep 10', WORKED_OUT)
  await app.evaluate(() => (window as unknown as { newest: Worker }).newest.dispatchEvent(new ErrorEvent('error')))
  await expect(panel(app).getByRole('alert')).toContainText('The part that reckons the other job has stopped')
  // A job that cannot be ground.
  await app.route('**/call', async (route) => {
    if (!route.request().postData()?.includes('job.open')) return route.continue()
    const response = await route.fetch()
    const answer = await response.json()
    answer.value.document.aim.projectionMm = null
    return route.fulfill({ response, json: answer })
  })
  await choose(app, 'nothing')
  await choose(app, '04 Bevel-up smoothing iron')
  await expect(panel(app).getByRole('alert')).toContainText('just two')
  await app.unroute('**/call')
  // The iron is put in the scrap box meanwhile.
  await app.evaluate(async () => {
    const call = async (name: string, input: object) => {
      const headers = { 'content-type': 'application/json' }
      const body = JSON.stringify({ callId: crypto.randomUUID(), name, input })
      return (await fetch('/call', { method: 'POST', headers, body })).json()
    }
    const { value } = await call('tool.find', {})
    const { id, version } = value.tools.find(({ code }: { code: string }) => code === '04')
    return call('tool.remove', { id, version })
  })
  await expect(panel(app).getByRole('alert')).toContainText('It is no longer there')
  await choose(app, 'this grind at its end, as planned')
  await expect(panel(app)).toContainText('this one stands at sweep 10, the other at sweep 120', WORKED_OUT)
  expect((await cells(app, 'relief left'))[0]).toBe(own[0])
})

test('@long a job opened from its file is compared with the job in hand', async ({ app }) => {
  await openCompare(app)
  await app.getByRole('button', { name: 'Job file' }).click()
  const downloading = app.waitForEvent('download')
  await app.getByRole('button', { name: 'Save this job' }).click()
  const job = JSON.parse(await readFile(await (await downloading).path(), 'utf8'))
  job.motion.sweeps = 150
  const file = { name: 'longer.job.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(job)) }
  await app.getByLabel('Open a job file').setInputFiles(file)
  await app.getByRole('button', { name: 'Compare', exact: true }).click()
  await seekSweep(app, 140)
  await choose(app, 'the job in hand')
  await expect(panel(app)).toContainText(
    'The other has fewer sweeps: it stands at its end, sweep 120, this one at sweep 140.',
    WORKED_OUT,
  )
  await expect(row(app, 'left stop, free play')).toContainText('the same')
  expect(await cells(app, 'sweeps')).toEqual(['150\u00a0sweeps', '120\u00a0sweeps'])
})

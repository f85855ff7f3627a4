import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { jobSchema } from '../../geometry/job.ts'
import type { BenchLog, Tool } from '../../main/contract/entities.ts'
import {
  type Bench,
  openBench,
  openOwnBench,
  stationDraft,
  steeredDraft,
  temporaryFolder,
  toolDraft,
} from './support.ts'

let place: ReturnType<typeof temporaryFolder>
let bench: Bench
let fixtureId: string
let stationId: string
let tool: Tool
beforeEach(async () => {
  place = temporaryFolder()
  bench = await openOwnBench(place.folder)
  stationId = (await bench.done('station.add', stationDraft)).value.id
  fixtureId = (await bench.done('fixture.add', steeredDraft)).value.id
  tool = (await bench.done('tool.add', toolDraft)).value
})
afterEach(async () => {
  await bench.workshop.close()
  place.remove()
})

/** One turn each side, pitch 0.8: 0.8 mm of free play, of which the model says 0.3 mm of relief (see support). */
const grind = async (reliefMm: number, changes: Partial<BenchLog> = {}, task: 'reshape' | 'freshen' = 'reshape') => {
  const job = await bench.done('job.open', { toolId: tool.id })
  const document = { ...job.document, aim: { ...job.document.aim, task } }
  const { value: edited } = await bench.done('job.edit', { id: job.id, version: job.version, document })
  const reading = {
    toolId: tool.id,
    jobId: edited.id,
    stage: 'asGround',
    reliefLeftMm: reliefMm,
    reliefRightMm: reliefMm,
  }
  return (await bench.done('benchLog.add', { leafStepMm: 0.02, ...reading, ...changes } as never)).value
}

const learnt = () => bench.done('fixture.learnt', { id: fixtureId })
const inJob = async () => (await bench.done('job.open', { toolId: tool.id })).document.fixture.calibration

describe('what a fixture learns', () => {
  it('counts reshapings measured as ground, with free play and model beside them', async () => {
    await grind(0.36)
    await grind(0.35, { stage: 'asFound' })
    await grind(0.35, { stage: 'asHoned' })
    await grind(0.35, {}, 'freshen')
    const { grinds, code, calibration, before } = await learnt()
    expect(grinds).toEqual([
      expect.objectContaining({
        toolCode: '01',
        freePlayMm: 0.8,
        modelReliefMm: 0.3,
        measuredReliefMm: 0.36,
        standing: 'used',
      }),
    ])
    expect([code, calibration.grinds, before?.grinds]).toEqual(['tooFewGrinds', 1, 0])
  })

  it('leaves the job to the model until three grinds stand behind it, and then corrects it', async () => {
    await grind(0.36)
    await grind(0.36)
    expect(await inJob()).toBeNull()
    await grind(0.36)
    const calibration = await inJob()
    expect(calibration?.grinds).toBe(3)
    // All at one free play: the fit lies near 0.36 / 0.3 = 1.2, pulled a little to the prior.
    const atOneTurn = (calibration?.scale ?? 0) * (1 + (calibration?.lashMm ?? 0) / 0.8)
    expect(atOneTurn).toBeGreaterThan(1.15)
    expect(atOneTurn).toBeLessThanOrEqual(1.2)
    expect(jobSchema.shape.fixture.shape.calibration.safeParse(calibration).success).toBe(true)
  })

  it('readings of 0.6, 1 and 1.6 of the model contradict each other and stay out of the job', async () => {
    for (const reliefMm of [0.18, 0.3, 0.48]) await grind(reliefMm)
    expect((await learnt()).code).toBe('contradict')
    expect(await inJob()).toBeNull()
  })

  it('shows one bad reading as such and learns nothing from it; unequal leaves do not count', async () => {
    for (const reliefMm of [0.36, 0.35, 0.37, 0.36]) await grind(reliefMm)
    const good = (await learnt()).calibration
    await grind(0.8)
    await grind(0.3, { reliefRightMm: 0.4 })
    const { calibration, grinds } = await learnt()
    expect(grinds.map(({ standing }) => standing)).toEqual(['used', 'used', 'used', 'used', 'outlier', 'unequal'])
    expect(calibration.scale).toBeCloseTo(good.scale, 12)
  })

  it('a grind is left out and let in again, each with its undo', async () => {
    const lines: BenchLog[] = []
    for (const reliefMm of [0.36, 0.36, 0.36]) lines.push(await grind(reliefMm))
    const [first] = lines as [BenchLog]
    const out = await bench.done('benchLog.edit', { id: first.id, version: first.version, counts: 'no' })
    expect((await learnt()).grinds[0]?.standing).toBe('excluded')
    expect(await inJob()).toBeNull()
    await bench.done('change.undo', { id: out.changeId })
    expect((await learnt()).grinds[0]?.standing).toBe('used')
    expect((await inJob())?.grinds).toBe(3)
    await bench.done('benchLog.remove', { id: first.id, version: 3 })
    expect((await learnt()).grinds).toHaveLength(2)
  })

  it('can be switched off, and grinds of another fixture are none of its own', async () => {
    for (const reliefMm of [0.36, 0.36, 0.36]) await grind(reliefMm)
    const { value: other } = await bench.done('fixture.add', steeredDraft)
    expect((await bench.done('fixture.learnt', { id: other.id })).grinds).toEqual([])
    await bench.done('fixture.edit', { id: fixtureId, version: 1, draft: { ...steeredDraft, learning: 'off' } })
    expect(await inJob()).toBeNull()
  })

  it('counts the steel a wheel takes: 60 x 3 x 0.1 mm in 120 sweeps is 0.15 a sweep, in 9 minutes 2 a minute', async () => {
    expect(await bench.done('station.removal', { id: stationId })).toBeNull()
    await grind(0.36, { setBackMm: 0.1, groundMinutes: 9 })
    const removal = await bench.done('station.removal', { id: stationId })
    expect(removal).toMatchObject({ grinds: 1, spreadMm3: 0 })
    expect([removal?.perSweepMm3, removal?.perMinuteMm3, removal?.sweepSeconds]).toEqual([
      expect.closeTo(0.15, 12),
      expect.closeTo(2, 12),
      expect.closeTo(4.5, 12),
    ])
    // The corners went from 0.36 to 0.66 behind: 0.3 / 3 more on the mean.
    await grind(0.66, { setBackMm: 0.1 })
    const both = await bench.done('station.removal', { id: stationId })
    expect(both?.perSweepMm3).toBeCloseTo((0.15 + (60 * 3 * 0.2) / 120) / 2, 12)
  })

  it('the demo workshop has learnt from five grinds, and shows a sixth that was no reading of its stops', async () => {
    const demoPlace = temporaryFolder()
    const demo = await openBench(demoPlace.folder)
    const [fixture] = await demo.done('fixture.list', {})
    const { grinds, code } = await demo.done('fixture.learnt', { id: fixture?.id ?? '' })
    expect(grinds.map(({ standing }) => standing)).toEqual(['used', 'outlier', 'used', 'used', 'used', 'used'])
    expect(code).toBe('learnt')
    await demo.workshop.close()
    demoPlace.remove()
  })
})

import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { failed, ok, problem } from '../../geometry/result.ts'
import { createBlobs } from '../../main/workshop/blobs.ts'
import {
  type Bench,
  codesOf,
  markedReport,
  openOwnBench,
  squareDraft,
  stationDraft,
  steeredDraft,
  temporaryFolder,
  toolDraft,
} from './support.ts'

let place: ReturnType<typeof temporaryFolder>
let bench: Bench
let stationId: string
let steeredId: string
let squareId: string
beforeEach(async () => {
  place = temporaryFolder()
  bench = await openOwnBench(place.folder)
  stationId = (await bench.done('station.add', stationDraft)).value.id
  steeredId = (await bench.done('fixture.add', steeredDraft)).value.id
  squareId = (await bench.done('fixture.add', squareDraft)).value.id
})
afterEach(async () => {
  await bench.workshop.close()
  place.remove()
})

const addTool = async (changes: Partial<typeof toolDraft> = {}) =>
  (await bench.done('tool.add', { ...toolDraft, ...changes })).value

describe('job.open', () => {
  it('makes the job from tool, station and a fixture that suits the edge', async () => {
    const tool = await addTool()
    const job = await bench.done('job.open', { toolId: tool.id })
    expect(job).toMatchObject({ code: 'J1', version: 1, toolId: tool.id, stationId, fixtureId: steeredId })
    expect(job.document.blade).toMatchObject({ widthMm: 60, thicknessMm: 3, seatAngleDeg: 45, bevelSide: 'down' })
    expect(job.document.aim).toMatchObject({
      bevelAngleDeg: 25,
      projectionMm: 130,
      barDistanceMm: null,
      reliefMm: 0.14,
    })
    expect(job.document.aim).toMatchObject({ woodReliefMm: null, edgeRadiusMm: null, shavingDepthMm: 0.08 })
    expect(job.document.station).toMatchObject({ wheelDiameterMm: 250, wheelSpeedRpm: 90, barDiameterMm: 12 })
    expect(job.document.fixture).toMatchObject({ kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8 })
    expect(job.document.motion).toMatchObject({ stopTurnsLeft: 1, stopTurnsRight: 1, loadN: 20, fingerReachMm: 26 })
  })

  it('is known by its tool in the list of changes and in what an undo tells', async () => {
    const tool = await addTool({ name: 'fore plane' })
    const { id, version, document } = await bench.done('job.open', { toolId: tool.id })
    const motion = { ...document.motion, sweeps: 33 }
    await bench.done('job.edit', { id, version, document: { ...document, motion } })
    const [edited] = await bench.done('change.list', {})
    expect(edited).toMatchObject({ noun: 'job', action: 'edited', label: 'fore plane' })
    expect(await bench.done('change.undo', {})).toMatchObject({ noun: 'job', label: 'fore plane' })
  })

  it('lets the blade lie on the face that the fixture is made for', async () => {
    const { value: fixture } = await bench.done('fixture.add', { ...steeredDraft, seatsOn: 'bevelSide' })
    const tool = await addTool()
    const job = await bench.done('job.open', { toolId: tool.id })
    expect(job.document.fixture.seatsOn).toBe('back')
    const edit = { id: job.id, version: job.version, document: job.document, fixtureId: fixture.id }
    expect((await bench.done('job.edit', edit)).value.document.fixture.seatsOn).toBe('bevelSide')
  })

  it('takes a square fixture and shut stops for a straight edge, and fingers that stay on a narrow one', async () => {
    const tool = await addTool({ reliefMm: 0, widthMm: 12, seatAngleDeg: null })
    const job = await bench.done('job.open', { toolId: tool.id })
    expect(job.fixtureId).toBe(squareId)
    // 26/57 of 12 mm is 5.47 mm, in whole millimetres 5
    expect(job.document.motion).toMatchObject({ stopTurnsLeft: 0, stopTurnsRight: 0, fingerReachMm: 5 })
    expect(job.document.fixture).toMatchObject({ guideArmMm: null, screwPitchMm: null })
  })

  it('opens the same job again, and is nothing that undo would take back', async () => {
    const tool = await addTool()
    const job = await bench.done('job.open', { toolId: tool.id })
    expect(await bench.done('job.open', { toolId: tool.id })).toEqual(job)
    expect(await bench.done('change.undo', {})).toMatchObject({ noun: 'tool', entityId: tool.id })
  })

  it('begins with the station and fixture used last', async () => {
    const { value: other } = await bench.done('station.add', { ...stationDraft, name: 'Other', wheelDiameterMm: 240 })
    const { value: short } = await bench.done('fixture.add', { ...steeredDraft, guideArmMm: 60 })
    const job = await bench.done('job.open', { toolId: (await addTool()).id })
    const { id, version, document } = job
    await bench.done('job.edit', { id, version, document, stationId: other.id, fixtureId: short.id })
    const again = await bench.done('job.open', { toolId: (await addTool()).id })
    await bench.done('job.edit', { id: again.id, version: 1, document, stationId, fixtureId: steeredId })
    await bench.done('job.edit', { id, version: 2, document, stationId: other.id, fixtureId: short.id })
    const next = await bench.done('job.open', { toolId: (await addTool()).id })
    expect(next).toMatchObject({ stationId: other.id, fixtureId: short.id })
    expect(next.document.station.wheelDiameterMm).toBe(240)
  })

  it('says what is missing in a workshop without station or fixture', async () => {
    const tool = await addTool()
    await bench.done('station.remove', { id: stationId, version: 1 })
    expect(codesOf(await bench.call('job.open', { toolId: tool.id }))).toEqual(['noStation'])
    await bench.done('change.undo', {})
    await bench.done('fixture.remove', { id: steeredId, version: 1 })
    await bench.done('fixture.remove', { id: squareId, version: 1 })
    expect(codesOf(await bench.call('job.open', { toolId: tool.id }))).toEqual(['noFixture'])
  })

  it('shows the wheel, the fixture and the tool as they are today', async () => {
    const tool = await addTool()
    const job = await bench.done('job.open', { toolId: tool.id })
    const { id, version, document } = job
    await bench.done('job.edit', { id, version, document: { ...document, aim: { ...document.aim, reliefMm: 0.2 } } })
    await bench.done('station.edit', { id: stationId, version: 1, draft: { ...stationDraft, wheelDiameterMm: 246.5 } })
    await bench.done('fixture.edit', { id: steeredId, version: 1, draft: { ...steeredDraft, seatOffsetMm: 16 } })
    await bench.done('tool.edit', { id: tool.id, version: 1, draft: { ...toolDraft, widthMm: 59, bevelAngleDeg: 27 } })
    const today = (await bench.done('job.open', { toolId: tool.id })).document
    expect(today.station.wheelDiameterMm).toBe(246.5)
    expect(today.fixture.seatOffsetMm).toBe(16)
    expect(today.blade.widthMm).toBe(59)
    expect(today.aim).toMatchObject({ bevelAngleDeg: 27, projectionMm: 130, reliefMm: 0.2 })
  })

  it('leaves an aim alone that is given another way', async () => {
    const tool = await addTool()
    const { id, version, document } = await bench.done('job.open', { toolId: tool.id })
    const aim = { ...document.aim, reliefMm: null, woodReliefMm: 0.1 }
    await bench.done('job.edit', { id, version, document: { ...document, aim } })
    await bench.done('tool.edit', { id: tool.id, version: 1, draft: { ...toolDraft, reliefMm: 0.3 } })
    const today = await bench.done('job.open', { toolId: tool.id })
    expect(today.document.aim).toMatchObject({ reliefMm: null, woodReliefMm: 0.1 })
  })

  it('goes on with another fixture when its own is gone', async () => {
    const tool = await addTool()
    await bench.done('job.open', { toolId: tool.id })
    await bench.done('fixture.remove', { id: steeredId, version: 1 })
    const job = await bench.done('job.open', { toolId: tool.id })
    expect(job).toMatchObject({ fixtureId: squareId, version: 1 })
    expect(job.document.motion).toMatchObject({ stopTurnsLeft: 0, stopTurnsRight: 0 })
    const { id, version, document } = job
    expect((await bench.done('job.edit', { id, version, document })).value.fixtureId).toBe(squareId)
  })
})

describe('job.edit', () => {
  it('keeps the document, and undo gives the one before back', async () => {
    const tool = await addTool()
    const { id, version, document } = await bench.done('job.open', { toolId: tool.id })
    const motion = { ...document.motion, stopTurnsLeft: 2, loadN: 31 }
    const edited = await bench.done('job.edit', { id, version, document: { ...document, motion } })
    expect(edited.value.document.motion).toEqual(motion)
    expect(edited.value.version).toBe(2)
    await bench.done('change.undo', { id: edited.changeId })
    expect((await bench.done('job.open', { toolId: tool.id })).document.motion).toEqual(document.motion)
  })

  it('fills in station and fixture from the records when they are changed', async () => {
    const tool = await addTool()
    const { id, version, document } = await bench.done('job.open', { toolId: tool.id })
    const { value } = await bench.done('job.edit', { id, version, document, fixtureId: squareId })
    expect(value.document.fixture.kind).toBe('square')
    expect(value.document.motion.stopTurnsLeft).toBe(0)
  })

  it('refuses what the job schema refuses, naming the field, and a stale version', async () => {
    const tool = await addTool()
    const { id, version, document } = await bench.done('job.open', { toolId: tool.id })
    const bad = await bench.call('job.edit', {
      id,
      version,
      document: { ...document, blade: { ...document.blade, widthMm: -3 } },
    })
    expect(bad).toEqual(failed(problem('tooSmall', 'document.blade.widthMm', { min: 3 })))
    expect(codesOf(await bench.call('job.edit', { id, version: 5, document }))).toEqual(['conflict'])
  })
})

describe('bench log', () => {
  const reading = {
    stage: 'asGround',
    reliefLeftMm: 0.12,
    reliefRightMm: 0.15,
    leafStepMm: 0.03,
    who: 'Nib',
    note: '',
  } as const

  it('keeps points across the edge as they were read', async () => {
    const tool = await addTool()
    const points = [
      { uMm: -28, gapMm: 0.5 },
      { uMm: 0, gapMm: 0 },
      { uMm: 27.5, gapMm: 0.48 },
    ]
    const { value: line } = await bench.done('benchLog.add', { ...reading, toolId: tool.id, method: 'points', points })
    expect(line).toMatchObject({ method: 'points', points, counts: 'yes' })
    expect(await bench.done('benchLog.list', { toolId: tool.id })).toEqual([line])
  })

  it('keeps a reading with its job and report, newest first', async () => {
    const tool = await addTool()
    const job = await bench.done('job.open', { toolId: tool.id })
    await bench.done('benchLog.add', { ...reading, toolId: tool.id })
    const { value: line } = await bench.done('benchLog.add', { ...reading, toolId: tool.id, jobId: job.id })
    expect(line).toMatchObject({
      code: 'L2',
      reliefLeftMm: 0.12,
      reliefRightMm: 0.15,
      leafStepMm: 0.03,
      engineVersion: 'test',
      jobId: job.id,
    })
    expect((await bench.done('benchLog.list', { toolId: tool.id })).map(({ code }) => code)).toEqual(['L2', 'L1'])
    const row = await bench.workshop.desk.access.read((db) =>
      db.selectFrom('benchLog').select(['job', 'report']).where('id', '=', line.id).executeTakeFirstOrThrow(),
    )
    expect(JSON.parse(row.job ?? '')).toEqual(job.document)
    expect(JSON.parse(row.report ?? '')).toEqual(markedReport)
  })

  it('can be removed and had back', async () => {
    const tool = await addTool()
    const { value: line } = await bench.done('benchLog.add', { ...reading, toolId: tool.id })
    await bench.done('benchLog.remove', { id: line.id, version: 1 })
    expect(await bench.done('benchLog.list', { toolId: tool.id })).toEqual([])
    await bench.done('change.undo', {})
    expect(await bench.done('benchLog.list', { toolId: tool.id })).toEqual([{ ...line, version: 3 }])
  })

  it('refuses a job of another tool, and keeps a reading whose job cannot be solved', async () => {
    const tool = await addTool()
    const other = await addTool()
    const job = await bench.done('job.open', { toolId: other.id })
    expect(codesOf(await bench.call('benchLog.add', { ...reading, toolId: tool.id, jobId: job.id }))).toEqual([
      'jobOfOtherTool',
    ])
    await bench.workshop.close()
    bench = await openOwnBench(place.folder, { solveJob: () => failed(problem('noBalance')) }, () =>
      crypto.randomUUID(),
    )
    const { value } = await bench.done('benchLog.add', { ...reading, toolId: other.id, jobId: job.id })
    expect(value).toMatchObject({ engineVersion: null, reliefRightMm: 0.15 })
  })
})

describe('template.make', () => {
  it('draws the job as it is today in the form asked for, in the workshop’s unit', async () => {
    await bench.workshop.close()
    const drawn: unknown[] = []
    const blobs = createBlobs()
    const makeTemplate = async ([input, choice, , lengthUnit]: readonly unknown[]) => {
      drawn.push(input, choice, lengthUnit)
      return ok({ bytes: new Uint8Array([60]), fileName: 'template.svg' })
    }
    bench = await openOwnBench(place.folder, { makeTemplate, blobs }, () => crypto.randomUUID())
    const tool = await addTool()
    const job = await bench.done('job.open', { toolId: tool.id })
    await bench.done('settings.edit', { lengthUnit: 'thou', theme: 'system' })
    const made = await bench.done('template.make', { id: job.id, form: 'svg', predicted: true })
    expect(drawn).toMatchObject([{ tool: { id: tool.id } }, { form: 'svg', predicted: true }, 'thou'])
    expect(blobs.get(made.blobId)).toMatchObject({ fileName: 'template.svg', mediaType: 'image/svg+xml' })
  })
})

describe('card.make', () => {
  const bytes = new Uint8Array([37, 80, 68, 70])

  it('draws the job as it is today and reports how far it is', async () => {
    await bench.workshop.close()
    const drawn: unknown[] = []
    const makeCard = async ([input]: readonly unknown[]) => {
      drawn.push(input)
      return ok({ bytes, fileName: 'card.pdf' })
    }
    bench = await openOwnBench(place.folder, { makeCard }, () => crypto.randomUUID())
    const tool = await addTool()
    const job = await bench.done('job.open', { toolId: tool.id })
    await bench.done('station.edit', { id: stationId, version: 1, draft: { ...stationDraft, wheelDiameterMm: 240 } })
    bench.events.length = 0
    const made = await bench.done('card.make', { id: job.id })
    expect(made.fileName).toBe('card.pdf')
    expect(drawn).toMatchObject([{ tool: { id: tool.id }, job: { document: { station: { wheelDiameterMm: 240 } } } }])
    expect(bench.events).toEqual([0, 1].map((done) => ({ type: 'progress', callId: 'c1', done })))
  })

  it('stops when it is cancelled', async () => {
    const job = await bench.done('job.open', { toolId: (await addTool()).id })
    const running = bench.call('card.make', { id: job.id }, 'card-7')
    bench.cancel('card-7')
    expect(codesOf(await running)).toEqual(['cancelled'])
  })
})

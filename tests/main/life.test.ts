import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Report } from '../../geometry/report.ts'
import { ok } from '../../geometry/result.ts'
import { type Bench, openOwnBench, stationDraft, steeredDraft, temporaryFolder, toolDraft } from './support.ts'

let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
/** 60 x 3 mm set back by 0.2 mm. */
const report = {
  engineVersion: 'test',
  grind: { reliefLeftMm: 0.1, reliefRightMm: 0.1, volumeRemovedMm3: 36 },
} as Report
beforeEach(async () => {
  folder = temporaryFolder()
  bench = await openOwnBench(folder.folder, { solveJob: () => ok(report) })
  await bench.done('station.add', stationDraft)
  await bench.done('fixture.add', steeredDraft)
})
afterEach(async () => {
  await bench.workshop.close()
  folder.remove()
})

it('what is left of an iron rests on its noted grinds, on the model without, and counts what was taken since it was measured', async () => {
  const { value: tool } = await bench.done('tool.add', toolDraft)
  const life = () => bench.done('tool.life', { id: tool.id })
  const job = await bench.done('job.open', { toolId: tool.id })
  const ground = (setBackMm: number | null) =>
    bench.done('benchLog.add', {
      ...{ toolId: tool.id, jobId: job.id, stage: 'asGround', reliefLeftMm: 0.1, reliefRightMm: 0.1, setBackMm },
    })
  await ground(null)
  expect(await life()).toBeNull()
  await bench.done('tool.edit', { id: tool.id, version: 1, draft: { ...toolDraft, lengthLeftMm: 20 } })
  expect(await life()).toMatchObject({ by: 'model', grinds: 100, perGrindMm: 0.2, counted: 1, takenSinceMm: 0 })
  await ground(0.5)
  await ground(null)
  // One noted grind of 0.5; 20 - 0.5 - 0.2 by the model are left.
  expect(await life()).toMatchObject({ by: 'bench', grinds: 39, counted: 1, lengthOn: '2026-01-05' })
  expect((await life())?.takenSinceMm).toBeCloseTo(0.7, 9)
  await bench.done('tool.edit', {
    id: tool.id,
    version: 2,
    draft: { ...toolDraft, lengthLeftMm: 18, note: 'measured' },
  })
  expect(await life()).toMatchObject({ takenSinceMm: 0, grinds: 36 })
  await ground(0.5)
  await bench.done('tool.edit', { id: tool.id, version: 3, draft: { ...toolDraft, lengthLeftMm: 18, note: 'noted' } })
  expect(await life()).toMatchObject({ takenSinceMm: 0.5, grinds: 35, counted: 2 })
})

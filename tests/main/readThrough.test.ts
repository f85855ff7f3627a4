import { sql } from 'kysely'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { ok } from '../../geometry/result.ts'
import { readsThrough } from '../../main/workshop/readThrough.ts'
import { type Bench, codesOf, openBench, temporaryFolder } from './support.ts'

let place: ReturnType<typeof temporaryFolder>
let bench: Bench
beforeEach(async () => {
  place = temporaryFolder()
  bench = await openBench(place.folder)
})
afterEach(async () => {
  await bench.workshop.close()
  place.remove()
})

const spoil = (statement: string) =>
  bench.workshop.desk.access.write(async (db) => ok(await sql.raw(statement).execute(db)))

it('the demo reads through, jobs, settings and undone changes too', async () => {
  const [tool] = (await bench.done('tool.find', {})).tools
  await bench.done('job.open', { toolId: tool?.id ?? '' })
  await bench.done('settings.edit', { lengthUnit: 'inch' })
  await bench.done('change.undo', {})
  await bench.done('progress.keep', { personId: null, lessonId: 'ink', step: 1, answers: {}, done: false })
  expect(await readsThrough(bench.workshop.desk)).toBe(true)
})

it.each([
  ["UPDATE tool SET kind = 'jacj' WHERE code = '03'", 'tool.find', {}],
  ["UPDATE tool SET curves = '[}' WHERE code = '03'", 'tool.find', {}],
  ["UPDATE toolState SET harmed = 'yet'", 'tool.find', {}],
  ["UPDATE change SET at = '2026-13-45'", 'change.list', {}],
  ["UPDATE progress SET answers = '[}'", 'progress.list', {}],
  ["UPDATE progress SET at = '2026-13-45'", 'progress.list', {}],
  ["UPDATE station SET rotation = 'intoEdgf'", 'station.list', {}],
] as const)('what a disk spoiled is told as that: %s', async (statement, name, input) => {
  await bench.done('settings.edit', { lengthUnit: 'inch' })
  await bench.done('progress.keep', { personId: null, lessonId: 'ink', step: 1, answers: {}, done: false })
  await spoil(statement)
  expect(codesOf(await bench.call(name, input))).toEqual(['dataUnreadable'])
  expect(await readsThrough(bench.workshop.desk)).toBe(false)
})

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { type Bench, codesOf, openOwnBench, temporaryFolder, toolDraft, toolsOf } from './support.ts'

const NAME = 'Zéphyrine Quillfeather'
let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
beforeEach(async () => {
  folder = temporaryFolder()
  bench = await openOwnBench(folder.folder)
})
afterEach(async () => {
  await bench.workshop.close()
  folder.remove()
})

/** Somebody who lent, wrote, honed and was written about, in letters large and small, with accents of both kinds. */
const lived = async () => {
  const { value: tool } = await bench.done('tool.add', { ...toolDraft, note: `Ground for ${NAME}, twice.` })
  await bench.done('loan.lend', { toolIds: [tool.id], person: NAME })
  await bench.done('loan.return', { toolIds: [tool.id] })
  const reading = { toolId: tool.id, stage: 'asGround' as const, reliefLeftMm: 0.1, reliefRightMm: 0.1 }
  await bench.done('benchLog.add', { ...reading, who: NAME.toUpperCase(), note: 'quillfeathered' })
  const at = '2020-03-01T08:00:00.000Z'
  await bench.done('happening.add', { toolId: tool.id, kind: 'honed', at, who: NAME.normalize('NFD') })
  const [person] = await bench.done('person.list', {})
  if (!person) throw new Error('nobody is there')
  return { tool, person }
}

/** Every byte that the data folder holds, with its copies and what lies beside the file. */
const bytesOf = (path: string): Buffer =>
  Buffer.concat(
    readdirSync(path, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => readFileSync(join(entry.parentPath, entry.name))),
  )
const standsIn = (bytes: Buffer): boolean =>
  [NAME, NAME.toUpperCase(), NAME.normalize('NFD'), NAME.toLowerCase()].some((each) => bytes.includes(each)) ||
  /quillfeather(?!ed)/i.test(bytes.toString('latin1'))

it('says where the name of somebody stands before it goes', async () => {
  const { tool, person } = await lived()
  await bench.done('copy.make', {})
  const traces = await bench.done('person.traces', { id: person.id })
  expect(traces).toMatchObject({ lines: 2, loans: 1, notes: [tool.code] })
  expect(traces.copies.length).toBeGreaterThan(0)
})

it('leaves no byte of the name in file, log and copies; what was done stays, under a code', async () => {
  const { tool, person } = await lived()
  await bench.done('copy.make', {})
  expect(standsIn(bytesOf(folder.folder))).toBe(true)
  const asked = { id: person.id, version: person.version, inNotes: true, copies: 'delete' as const }
  expect(await bench.done('person.purge', asked)).toEqual({ copies: [] })
  expect(standsIn(bytesOf(folder.folder))).toBe(false)
  expect(await bench.done('person.list', {})).toEqual([])
  expect(await toolsOf(bench, 'twice')).toMatchObject([{ note: `Ground for ${person.code}, twice.` }])
  expect(await toolsOf(bench, 'quillfeather')).toHaveLength(1)
  expect(await bench.done('benchLog.list', { toolId: tool.id })).toMatchObject([
    { who: person.code, note: 'quillfeathered' },
  ])
  expect(await bench.done('happening.list', { toolId: tool.id })).toMatchObject([{ who: person.code }])
  expect((await bench.done('copy.list', {})).copies).toHaveLength(1)
})

it('names the copies that still hold the name, and leaves notes alone where that is asked', async () => {
  const { person } = await lived()
  await bench.done('copy.make', {})
  const { copies } = await bench.done('copy.list', {})
  const asked = { id: person.id, version: person.version, inNotes: false, copies: 'keep' as const }
  const left = await bench.done('person.purge', asked)
  expect(left.copies.map(({ name }) => name)).toContain(copies[0]?.name)
  expect(await toolsOf(bench, 'twice')).toMatchObject([{ note: `Ground for ${NAME}, twice.` }])
})

it('cannot be taken back, and neither can what was done before with that person', async () => {
  const { person } = await lived()
  await bench.done('person.purge', { id: person.id, version: 1, inNotes: true, copies: 'delete' })
  const lines = await bench.done('change.list', { entityId: person.id })
  expect(lines.map(({ action, label }) => [action, label])).toEqual([
    ['purged', person.code],
    ['added', person.code],
  ])
  expect(codesOf(await bench.call('change.undo', { id: lines[0]?.id }))).toEqual(['goneForGood'])
  expect(codesOf(await bench.call('change.undo', { id: lines[1]?.id }))).toEqual(['conflict'])
  const newest = await bench.done('change.undo', {})
  expect(newest).toMatchObject({ noun: 'happening' })
})

it('refuses whoever still has a tool, and a record that somebody else has changed', async () => {
  const { value: tool } = await bench.done('tool.add', toolDraft)
  await bench.done('loan.lend', { toolIds: [tool.id], person: NAME })
  const [person] = await bench.done('person.list', {})
  const purge = (version: number) =>
    bench.call('person.purge', { id: person?.id ?? '', version, inNotes: true, copies: 'keep' })
  expect(codesOf(await purge(1))).toEqual(['personHolds'])
  await bench.done('loan.return', { toolIds: [tool.id] })
  expect(codesOf(await purge(2))).toEqual(['conflict'])
  expect(await bench.done('person.list', {})).toMatchObject([{ name: NAME }])
})

import fc from 'fast-check'
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { ToolLine } from '../../main/contract/entities.ts'
import { askedSchema, type Filter, type SortColumn } from '../../main/contract/finding.ts'
import { findTools } from '../../main/rack/finding/findTools.ts'
import { standingOf } from '../../main/rack/finding/standing.ts'
import { seeded } from '../support/seeded.ts'
import { type Bench, openOwnBench, temporaryFolder, toolDraft } from './support.ts'

/** Enough of each kind of state, few enough to go through one by one. */
const TOOLS = 60
const NOW = '2026-05-20T09:00:00.000Z'
const DAY_MS = 24 * 3600 * 1000

let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
let all: readonly ToolLine[]
const codes: string[] = []

beforeAll(async () => {
  folder = temporaryFolder()
  bench = await openOwnBench(folder.folder, {}, undefined, () => new Date(NOW))
  const random = seeded(61)
  const one = <T>(...of: readonly T[]): T => of[Math.floor(random() * of.length)] as T
  const at = () => new Date(Date.parse(NOW) - Math.floor(random() * 90) * DAY_MS).toISOString()
  for (let n = 0; n < TOOLS; n += 1) {
    const { value: tool } = await bench.done('tool.add', {
      ...toolDraft,
      ...{ name: one('jack', 'Jointer', 'block'), maker: one('', 'Hobb'), reliefMm: one(0, 0.1) },
      ...{
        condition: one('good', 'good', 'damaged', 'retired'),
        dueDays: one(null, 20, 40),
        dueHonings: one(null, 1, 2),
      },
    })
    for (let k = 0; k < one(0, 1, 2); k += 1)
      await bench.done('happening.add', { toolId: tool.id, kind: one('honed', 'honed', 'nicked'), at: at() })
    if (one(true, true, false)) await bench.done('loan.lend', { toolIds: [tool.id], person: one('Wren', 'Osk') })
    if (one(true, false, false, false)) await bench.done('tool.remove', { id: tool.id, version: 1 })
  }
  // Grinds are noted by the clock of the bench, so their days are spread by hand, as an import would bring them.
  await bench.workshop.desk.access.write(async (db) => {
    for (const { id } of await db.selectFrom('tool').select('id').execute())
      if (one(true, true, false))
        await db
          .insertInto('benchLog')
          .values({ ...blankLine, id: `l-${id}`, code: `L${id}`, toolId: id, at: at() })
          .execute()
    return { ok: true, value: null }
  })
  all = (await bench.done('tool.find', {})).tools
  codes.push(...all.map(({ code }) => code))
})
afterAll(async () => {
  await bench.workshop.close()
  folder.remove()
})

const blankLine = {
  ...{ version: 1, deletedAt: null, jobId: null, stage: 'asGround', reliefLeftMm: null, reliefRightMm: null },
  ...{ reliefHalfwayMm: null, leafStepMm: null, method: 'leaves', points: null, groundMinutes: null, setBackMm: null },
  ...{ squareGapMm: null, squareOverMm: null, counts: 'yes' as const, stationId: null, fixtureId: null, task: null },
  ...{ sweeps: null, freePlayLeftMm: null, freePlayRightMm: null, modelReliefMm: null, who: '', note: '' },
  ...{ engineVersion: null, job: null, report: null },
}

/** The rule of what is due, written once more and plainly. */
const dueOf = ({ condition, harmed, honings, dueHonings, dueDays, lastGroundAt }: ToolLine): ToolLine['due'] => {
  if (condition === 'retired') return null
  if (harmed === 'yes' || condition === 'damaged') return 'state'
  if (dueHonings !== null && honings >= dueHonings) return 'use'
  if (dueDays === null || lastGroundAt === null) return null
  return Date.parse(NOW) - Date.parse(lastGroundAt) >= dueDays * DAY_MS ? 'time' : null
}

const isSharp = (tool: ToolLine): boolean =>
  (tool.lastGroundAt !== null || tool.honings > 0) &&
  (tool.condition === 'good' || tool.condition === 'worn') &&
  tool.harmed === 'no' &&
  dueOf(tool) === null &&
  tool.holder === ''

const holds = (tool: ToolLine, search: string, { due, lent, edge, sharp }: Filter): boolean =>
  (sharp === undefined || isSharp(tool)) &&
  (due === undefined || (due === 'any' ? dueOf(tool) !== null : dueOf(tool) === due)) &&
  (lent === undefined || (lent === 'here' ? tool.holder === '' : lent === 'lent' && tool.holder !== '')) &&
  (edge === undefined || (edge === 'curved') === tool.reliefMm > 0) &&
  search.split(' ').every((word) =>
    `${tool.name} ${tool.maker} ${tool.holder}`
      .toLowerCase()
      .split(' ')
      .some((each) => each.startsWith(word)),
  )

it('the rack has tools due for each reason, lent ones, and some in the scrap box', () => {
  expect(new Set(all.map(({ due }) => due))).toEqual(new Set([null, 'state', 'use', 'time']))
  expect(all.length).toBeLessThan(TOOLS)
  for (const tool of all) expect([tool.code, tool.due]).toEqual([tool.code, dueOf(tool)])
})

it('whatever is asked is what going through all of them one by one finds, page by page, with its number', async () => {
  const filters = fc.record<Filter>(
    {
      due: fc.constantFrom('any', 'state', 'use', 'time'),
      lent: fc.constantFrom('lent', 'here'),
      edge: fc.constantFrom('straight', 'curved'),
      sharp: fc.constant('yes'),
    },
    { requiredKeys: [] },
  )
  const searches = fc.constantFrom('', 'j', 'ja', 'hobb', 'w h', 'jointer o', 'nobody')
  const sorts = fc.constantFrom<SortColumn>('code', 'name', 'due', 'honings', 'place', 'lastGroundAt', 'reliefMm')
  await fc.assert(
    fc.asyncProperty(filters, searches, sorts, fc.boolean(), async (filter, search, sort, descending) => {
      const found: string[] = []
      let total = 0
      for (let offset = 0; offset === 0 || offset < total; offset += 7) {
        const asked = askedSchema.parse({ search, filter, sort, descending, offset, limit: 7 })
        const page = await bench.workshop.desk.access.read((db) => findTools(db, asked, NOW))
        found.push(...page.tools.map(({ code }) => code))
        total = page.total
      }
      const wanted = all.filter((tool) => holds(tool, search, filter)).map(({ code }) => code)
      expect([...found].sort()).toEqual([...wanted].sort())
      expect(total).toBe(wanted.length)
    }),
    { numRuns: 60 },
  )
})

it('the sentence of how the rack stands counts the same', async () => {
  const standing = await bench.workshop.desk.access.read((db) => standingOf(db, NOW))
  expect(standing).toMatchObject({
    tools: all.length,
    curved: all.filter(({ reliefMm }) => reliefMm > 0).length,
    lent: all.filter(({ holder }) => holder !== '').length,
    due: all.filter((tool) => dueOf(tool) !== null).length,
  })
})

it('when an iron is due follows its record, its log and the scrap box at once, and every undo', async () => {
  const dueNow = async (id: string) => (await bench.done('tool.one', { id }))?.due ?? null
  const { value: tool } = await bench.done('tool.add', { ...toolDraft, dueHonings: 1 })
  expect(await dueNow(tool.id)).toBeNull()
  const honed = await bench.done('happening.add', { toolId: tool.id, kind: 'honed', at: NOW })
  expect(await dueNow(tool.id)).toBe('use')
  await bench.done('tool.edit', { id: tool.id, version: 1, draft: { ...toolDraft, dueHonings: 2 } })
  expect(await dueNow(tool.id)).toBeNull()
  await bench.done('change.undo', {})
  expect(await dueNow(tool.id)).toBe('use')
  await bench.done('change.undo', { id: honed.changeId })
  expect(await dueNow(tool.id)).toBeNull()
  await bench.done('tool.edit', { id: tool.id, version: 3, draft: { ...toolDraft, condition: 'damaged' } })
  expect(await dueNow(tool.id)).toBe('state')
  const before = await bench.done('tool.standing', {})
  await bench.done('tool.remove', { id: tool.id, version: 4 })
  expect((await bench.done('tool.standing', {})).due).toBe(before.due - 1)
})

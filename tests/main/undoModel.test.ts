import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type Bench, codesOf, openOwnBench, temporaryFolder, toolDraft } from './support.ts'

/** A record in the model: what stands, or null where it lies in the scrap box. */
type State = string | null
type Noun = 'tool' | 'place'
interface Line {
  readonly changes: readonly { readonly key: string; readonly before: State; readonly after: State }[]
  undone: boolean
  /** An undo is taken back only by its own id, never as the newest. */
  readonly isUndo: boolean
  readonly undoes: Line | null
}

/** The rack as one who knows only its promises would keep it: what stands, and every change in order. */
interface Model {
  readonly records: Map<string, State>
  readonly lines: Line[]
  readonly ids: Map<string, string>
}

/** A change still matches where each of its records was last changed by it, or by what is settled since. */
const mayUndo = ({ lines }: Model, line: Line): boolean => {
  if (line.undone) return false
  const later = lines.slice(lines.indexOf(line) + 1)
  return line.changes.every(({ key }) =>
    later
      .filter(({ changes }) => changes.some((change) => change.key === key))
      .every((each) => !line.isUndo && (each.undone || each.isUndo)),
  )
}

const record = (model: Model, changes: Line['changes'], undoes: Line | null = null): void => {
  for (const { key, after } of changes) model.records.set(key, after)
  model.lines.push({ changes, undone: false, isUndo: undoes !== null, undoes })
}

const takeBack = (model: Model, line: Line): void => {
  line.undone = true
  if (line.undoes) line.undoes.undone = false
  record(
    model,
    [...line.changes].reverse().map(({ key, before, after }) => ({ key, before: after, after: before })),
    line,
  )
}

interface Real {
  bench: Bench
  readonly folder: string
  /** Ids of changes, in the order of the model's lines. */
  readonly changeIds: number[]
}

const draftOf = (noun: Noun, name: string): never =>
  (noun === 'tool' ? { ...toolDraft, name } : { name, parentId: null, note: '' }) as never

/** What really stands, by id. */
const reallyStanding = async ({ bench }: Real) => {
  const [places, { tools }] = [await bench.done('place.list', {}), await bench.done('tool.find', {})]
  return new Map([...places, ...tools].map((each) => [each.id, each]))
}

const versionOf = async (real: Real, id: string): Promise<number> => (await reallyStanding(real)).get(id)?.version ?? 0

type Step = (model: Model, real: Real) => Promise<void>

const nth = <T>(of: readonly T[], n: number): T | undefined => of[n % Math.max(of.length, 1)]
const standing = ({ records }: Model): string[] => [...records].flatMap(([key, state]) => (state === null ? [] : [key]))
const nounOf = (key: string): Noun => key.slice(0, key.indexOf(':')) as Noun

const add =
  (noun: Noun, name: string): Step =>
  async (model, real) => {
    const made = await real.bench.done(`${noun}.add`, draftOf(noun, name))
    const key = `${noun}:${model.ids.size}`
    model.ids.set(key, made.value.id)
    real.changeIds.push(made.changeId)
    record(model, [{ key, before: null, after: name }])
  }

const edit =
  (n: number, name: string): Step =>
  async (model, real) => {
    const key = nth(standing(model), n)
    if (key === undefined || model.records.get(key) === name) return
    const id = model.ids.get(key) as string
    const version = await versionOf(real, id)
    const made = await real.bench.done(`${nounOf(key)}.edit`, { id, version, draft: draftOf(nounOf(key), name) })
    real.changeIds.push(made.changeId)
    record(model, [{ key, before: model.records.get(key) ?? null, after: name }])
  }

const remove =
  (n: number): Step =>
  async (model, real) => {
    const key = nth(standing(model), n)
    if (key === undefined) return
    const id = model.ids.get(key) as string
    const version = await versionOf(real, id)
    const made = await real.bench.done(`${nounOf(key)}.remove`, { id, version })
    real.changeIds.push(made.changeId)
    record(model, [{ key, before: model.records.get(key) ?? null, after: null }])
  }

/** Several tools as one change. */
const removeTools =
  (n: number): Step =>
  async (model, real) => {
    const keys = standing(model).filter((key) => nounOf(key) === 'tool')
    const some = keys.slice(0, 2 + (n % 2))
    if (some.length < 2) return
    const ids = some.map((key) => model.ids.get(key) as string)
    const made = await real.bench.done('tools.remove', { which: { ids } })
    real.changeIds.push(made.changeId)
    record(
      model,
      some.map((key) => ({ key, before: model.records.get(key) ?? null, after: null })),
    )
  }

/** @param n which of all changes; null: the newest that stands, as the key in the header asks */
const undo =
  (n: number | null): Step =>
  async (model, real) => {
    const line = n === null ? model.lines.findLast((each) => !each.undone && !each.isUndo) : nth(model.lines, n)
    const asked = n === null || !line ? {} : { id: real.changeIds[model.lines.indexOf(line)] as number }
    const undone = await real.bench.call('change.undo', asked)
    if (!line) return expect(codesOf(undone)).toEqual(['nothingToUndo'])
    if (!mayUndo(model, line)) return expect(codesOf(undone)).toEqual(['conflict'])
    expect(codesOf(undone)).toEqual([])
    takeBack(model, line)
    real.changeIds.push(undone.ok ? undone.value.id : 0)
  }

const reopen: Step = async (_model, real) => {
  await real.bench.workshop.close()
  real.bench = await open(real.folder)
}

const open = (folder: string) => openOwnBench(folder, {}, () => crypto.randomUUID())

const name = fc.constantFrom('a', 'b', 'c')
const n = fc.nat(20)
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.tuple(fc.constantFrom<Noun>('tool', 'place'), name).map(([noun, word]) => add(noun, word)),
  },
  { weight: 4, arbitrary: fc.tuple(n, name).map(([which, word]) => edit(which, word)) },
  { weight: 2, arbitrary: n.map(remove) },
  { weight: 2, arbitrary: n.map(removeTools) },
  { weight: 4, arbitrary: fc.constant(undo(null)) },
  { weight: 5, arbitrary: n.map(undo) },
  { weight: 1, arbitrary: fc.constant(reopen) },
)

const expectSame = async (model: Model, real: Real): Promise<void> => {
  const there = await reallyStanding(real)
  const found = [...model.records.keys()].map((key) => [key, there.get(model.ids.get(key) as string)?.name ?? null])
  expect(found).toEqual([...model.records])
}

/** Histories tried; each opens a file of its own. */
const HISTORIES = 15

it('any history of changes and undos leaves what one who keeps only the promises would have', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 4, maxLength: 24 }), async (steps) => {
      const place = temporaryFolder()
      const model: Model = { records: new Map(), lines: [], ids: new Map() }
      const real: Real = { bench: await open(place.folder), folder: place.folder, changeIds: [] }
      try {
        for (const each of steps) {
          await each(model, real)
          await expectSame(model, real)
        }
      } finally {
        await real.bench.workshop.close()
        place.remove()
      }
    }),
    { numRuns: HISTORIES },
  )
})

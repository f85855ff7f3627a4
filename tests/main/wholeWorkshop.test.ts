import BetterSqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { failed, ok, problem } from '../../geometry/result.ts'
import { asOne } from '../../main/database/change.ts'
import { migrate } from '../../main/database/migrate.ts'
import { migrations } from '../../main/database/migrations.ts'
import { addRecord, editRecord } from '../../main/rack/recordServices.ts'
import { loanStore } from '../../main/rack/stores.ts'
import { toolStore } from '../../main/rack/tool.ts'
import { benchForEach } from './benchForEach.ts'
import { codesOf, toolDraft, toolsOf } from './support.ts'

const bench = benchForEach()

const line = async () => (await toolsOf(bench()))[0]
const found = async (search: string) => (await toolsOf(bench(), search)).map(({ code }) => code)

describe('what the file keeps of a tool by itself', () => {
  it('is its place by the whole way down, found under any name on it, also when one is changed and taken back', async () => {
    const { value: room } = await bench().done('place.add', { name: 'Loft' })
    const { value: drawer } = await bench().done('place.add', { name: 'Drawer two', parentId: room.id })
    await bench().done('tool.add', { ...toolDraft, placeId: drawer.id })
    expect(await line()).toMatchObject({ place: 'Loft / Drawer two' })
    expect(await found('loft')).toEqual(['01'])
    await bench().done('place.edit', { id: room.id, version: 1, draft: { name: 'Cellar' } })
    expect(await line()).toMatchObject({ place: 'Cellar / Drawer two' })
    expect([await found('loft'), await found('cellar')]).toEqual([[], ['01']])
    await bench().done('change.undo', {})
    expect(await found('loft')).toEqual(['01'])
  })

  it('is who made it, as far as anybody knows', async () => {
    const { value: tool } = await bench().done('tool.add', { ...toolDraft, maker: 'Forge at Nether Loom' })
    expect(await found('nether')).toEqual(['01'])
    await bench().done('tool.edit', { id: tool.id, version: 1, draft: { ...toolDraft, maker: 'Hobb' } })
    expect([await found('nether'), await found('hobb')]).toEqual([[], ['01']])
  })

  it('are its honings and nicks since it was last ground, and when it was seen', async () => {
    const { value: tool } = await bench().done('tool.add', toolDraft)
    const happen = (kind: 'honed' | 'nicked', at: string) =>
      bench().done('happening.add', { toolId: tool.id, kind, at })
    await happen('honed', '2020-03-01T08:00:00.000Z')
    await happen('nicked', '2020-03-02T08:00:00.000Z')
    expect(await line()).toMatchObject({ honings: 1, harmed: 'yes', lastSeenAt: '2020-03-02T08:00:00.000Z' })
    const ground = { toolId: tool.id, stage: 'asGround' as const, reliefLeftMm: 0.1, reliefRightMm: 0.2 }
    const { changeId } = await bench().done('benchLog.add', ground)
    expect(await line()).toMatchObject({ honings: 0, harmed: 'no' })
    expect((await line())?.measuredReliefMm).toBeCloseTo(0.15, 12)
    await bench().done('change.undo', { id: changeId })
    expect(await line()).toMatchObject({ honings: 1, harmed: 'yes', lastGroundAt: null })
  })

  it('is one holder at a time, by the file itself', async () => {
    const { value: tool } = await bench().done('tool.add', toolDraft)
    const { value: person } = await bench().done('person.add', { name: 'Wren Oddly' })
    const loan = { toolId: tool.id, personId: person.id, lentAt: '2020-03-01T08:00:00.000Z', dueBack: '2020-03-09' }
    const { desk } = bench().workshop
    const lend = () =>
      desk.access.write((db) => addRecord(db, desk, loanStore, { ...loan, returnedAt: null, note: '' }))
    await lend()
    expect(await line()).toMatchObject({ holder: 'Wren Oddly', dueBack: '2020-03-09' })
    expect(await found('oddly')).toEqual(['01'])
    await expect(lend()).rejects.toThrow(/UNIQUE constraint failed: loan.toolId/)
    await bench().done('person.edit', { id: person.id, version: 1, draft: { name: 'Wren Evenly' } })
    expect([await found('oddly'), await found('evenly')]).toEqual([[], ['01']])
  })
})

describe('changes made as one', () => {
  const renamed = async () => {
    const { desk } = bench().workshop
    const tools = [await bench().done('tool.add', toolDraft), await bench().done('tool.add', toolDraft)]
    const made = await desk.access.write((db) =>
      asOne(db, async () => {
        for (const { value } of tools) {
          const edited = await editRecord(db, desk, toolStore, value, { name: `renamed ${value.code}` })
          if (!edited.ok) return edited
        }
        return ok('all')
      }),
    )
    if (!made.ok) throw new Error('not renamed')
    return made.value
  }
  const names = async () => (await toolsOf(bench())).map(({ name }) => name)

  it('stand as one line in the log, are taken back as one, and done again as one', async () => {
    const { changeId } = await renamed()
    expect((await bench().done('change.list', {})).map(({ id, together }) => [id, together])).toEqual([
      [changeId, 2],
      [2, 1],
      [1, 1],
    ])
    const back = await bench().done('change.undo', {})
    expect(back).toMatchObject({ together: 2, action: 'restored' })
    expect(await names()).toEqual([toolDraft.name, toolDraft.name])
    await bench().done('change.undo', { id: back.id })
    expect(await names()).toEqual(['renamed 01', 'renamed 02'])
  })

  it('are not taken back at all where one of them has moved on', async () => {
    const { changeId } = await renamed()
    const [first] = await toolsOf(bench())
    await bench().done('tool.edit', { id: first?.id ?? '', version: 2, draft: { ...toolDraft, name: 'later' } })
    expect(codesOf(await bench().call('change.undo', { id: changeId }))).toEqual(['conflict'])
    expect(await names()).toEqual(['later', 'renamed 02'])
  })

  it('leave nothing where the work fails', async () => {
    const { desk } = bench().workshop
    const made = await desk.access.write((db) =>
      asOne(db, async () => {
        await addRecord(db, desk, toolStore, toolDraft)
        return failed(problem('conflict'))
      }),
    )
    expect([made.ok, await names(), await bench().done('change.list', {})]).toEqual([false, [], []])
  })
})

it('version 5 makes places and loans of the words that stood on the tools', () => {
  const file = new BetterSqlite(':memory:')
  file.pragma('foreign_keys = ON')
  file.pragma('trusted_schema = OFF')
  migrate(
    file,
    migrations.filter(({ version }) => version < 5),
    null,
  )
  const add =
    file.prepare(`INSERT INTO tool (id, version, code, name, kind, widthMm, thicknessMm, bevelSide, bevelAngleDeg,
      projectionMm, reliefMm, shavingDepthMm, dotCorner, steel, place, holder, note, searchText)
    VALUES (?, 1, ?, 'kept', 'jack', 50, 3, 'down', 25, 130, 1, 0.4, 'left', '', ?, ?, '', '')`)
  add.run('a', '01', ' wall ', 'Nib')
  add.run('b', '02', 'wall', '')
  add.run('c', '03', '', 'Nib')
  migrate(file, migrations, null)
  const rows = file.prepare(`SELECT tool.code, place.code AS place, place.name, person.code AS person FROM tool
    LEFT JOIN place ON place.id = placeId LEFT JOIN toolState ON toolId = tool.id LEFT JOIN person ON person.id = holderId
    ORDER BY tool.code`)
  expect(rows.raw().all()).toEqual([
    ['01', 'P1', 'wall', 'N1'],
    ['02', 'P1', 'wall', null],
    ['03', null, null, 'N1'],
  ])
  const search = file.prepare("SELECT count(*) FROM toolSearch WHERE toolSearch MATCH 'wall'").pluck()
  expect(search.get()).toBe(2)
  expect(file.pragma('integrity_check', { simple: true })).toBe('ok')
  const counted = file.prepare(
    "SELECT noun, last FROM codeCounter WHERE noun IN ('place', 'person', 'loan') ORDER BY noun",
  )
  expect(counted.raw().all()).toEqual([
    ['loan', 2],
    ['person', 1],
    ['place', 1],
  ])
})

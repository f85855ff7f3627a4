import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Bench, codesOf, countedIds, openBench, openOwnBench, temporaryFolder, toolDraft } from './support.ts'

let place: ReturnType<typeof temporaryFolder>
let bench: Bench
beforeEach(async () => {
  place = temporaryFolder()
  bench = await openOwnBench(place.folder)
})
afterEach(async () => {
  await bench.workshop.close()
  place.remove()
})

const names = async () => (await bench.done('tool.list', {})).map(({ name }) => name)
const edit = async (id: string, name: string) => {
  const tool = (await bench.done('tool.list', {})).find((one) => one.id === id)
  return bench.done('tool.edit', { id, version: tool?.version ?? 0, draft: { ...toolDraft, name } })
}

describe('undo', () => {
  it('of an add removes, of that undo adds again with the same id and code', async () => {
    const { value: tool, changeId } = await bench.done('tool.add', toolDraft)
    const undone = await bench.done('change.undo', { id: changeId })
    expect(undone).toMatchObject({
      noun: 'tool',
      entityId: tool.id,
      action: 'restored',
      label: toolDraft.name,
      undone: false,
    })
    expect(await names()).toEqual([])
    await bench.done('change.undo', { id: undone.id })
    expect(await bench.done('tool.list', {})).toMatchObject([{ ...tool, version: 3 }])
    await bench.done('change.undo', {})
    expect(await names()).toEqual([])
  })

  it('of a removal restores every field', async () => {
    const { value: tool } = await bench.done('tool.add', { ...toolDraft, note: 'Nib' })
    const { changeId } = await bench.done('tool.remove', { id: tool.id, version: 1 })
    await bench.done('change.undo', { id: changeId })
    expect(await bench.done('tool.list', { search: 'nib' })).toMatchObject([{ ...tool, version: 3 }])
  })

  it('takes back edits one by one, newest first, and then the add', async () => {
    const { value: tool } = await bench.done('tool.add', { ...toolDraft, name: 'one' })
    await edit(tool.id, 'two')
    await edit(tool.id, 'three')
    const seen: string[][] = []
    for (let i = 0; i < 3; i += 1) {
      await bench.done('change.undo', {})
      seen.push(await names())
    }
    expect(seen).toEqual([['two'], ['one'], []])
    expect(codesOf(await bench.call('change.undo', {}))).toEqual(['nothingToUndo'])
  })

  it('refuses an older change while a newer one stands, and takes it once that is taken back', async () => {
    const { value: tool } = await bench.done('tool.add', { ...toolDraft, name: 'one' })
    const second = await edit(tool.id, 'two')
    const third = await edit(tool.id, 'three')
    expect(codesOf(await bench.call('change.undo', { id: second.changeId }))).toEqual(['conflict'])
    expect(await names()).toEqual(['three'])
    await bench.done('change.undo', { id: third.changeId })
    await bench.done('change.undo', { id: second.changeId })
    expect(await names()).toEqual(['one'])
  })

  it('refuses a change twice, and one that is not in the log', async () => {
    const { changeId } = await bench.done('tool.add', toolDraft)
    await bench.done('change.undo', { id: changeId })
    expect(codesOf(await bench.call('change.undo', { id: changeId }))).toEqual(['conflict'])
    expect(codesOf(await bench.call('change.undo', { id: 999 }))).toEqual(['nothingToUndo'])
  })

  it('refuses when the record was changed past the log', async () => {
    const { value: tool, changeId } = await bench.done('tool.add', toolDraft)
    await bench.workshop.desk.access.read((db) =>
      db.updateTable('tool').set({ version: 9 }).where('id', '=', tool.id).execute(),
    )
    expect(codesOf(await bench.call('change.undo', { id: changeId }))).toEqual(['conflict'])
  })

  it('never lets a version seen before an undo pass for the one after it', async () => {
    const { value: tool } = await bench.done('tool.add', { ...toolDraft, name: 'one' })
    const { value: seen } = await edit(tool.id, 'two')
    await bench.done('change.undo', {})
    const late = await bench.call('tool.edit', {
      id: tool.id,
      version: seen.version,
      draft: { ...toolDraft, name: 'late' },
    })
    expect(codesOf(late)).toEqual(['conflict'])
  })

  it('leaves changes of another form of the file as history', async () => {
    const { changeId } = await bench.done('tool.add', toolDraft)
    await bench.workshop.desk.access.read((db) => db.updateTable('change').set({ schemaVersion: 0 }).execute())
    expect(codesOf(await bench.call('change.undo', { id: changeId }))).toEqual(['historyOnly'])
    expect(codesOf(await bench.call('change.undo', {}))).toEqual(['nothingToUndo'])
  })

  it('lasts over a restart', async () => {
    const { value: tool } = await bench.done('tool.add', { ...toolDraft, name: 'one' })
    await edit(tool.id, 'two')
    await bench.workshop.close()
    bench = await openBench(place.folder, {}, countedIds())
    await bench.done('change.undo', {})
    expect(await names()).toEqual(['one'])
    await bench.done('change.undo', {})
    expect(await names()).toEqual([])
  })

  it('lists the newest first and says which were taken back', async () => {
    const { value: tool } = await bench.done('tool.add', { ...toolDraft, name: 'one' })
    await edit(tool.id, 'two')
    await bench.done('change.undo', {})
    const lines = (await bench.done('change.list', {})).map(({ action, label, undone, who }) => [
      action,
      label,
      undone,
      who,
    ])
    expect(lines).toEqual([
      ['restored', 'one', false, 'tester'],
      ['edited', 'two', true, 'tester'],
      ['added', 'one', false, 'tester'],
    ])
    expect(await bench.done('change.list', { most: 1 })).toHaveLength(1)
  })

  it('says which plain fields a change touched, of one record or of all, and what lies in the scrap box', async () => {
    const { value: tool } = await bench.done('tool.add', { ...toolDraft, name: 'one' })
    const { value: other } = await bench.done('tool.add', { ...toolDraft, name: 'other' })
    await bench.done('tool.edit', {
      id: tool.id,
      version: 1,
      draft: { ...toolDraft, name: 'one', widthMm: 58, steel: 'O1' },
    })
    const [edited, added, ...more] = await bench.done('change.list', { entityId: tool.id })
    expect(edited?.fields).toEqual([
      { key: 'widthMm', before: 60, after: 58 },
      { key: 'steel', before: '', after: 'O1' },
    ])
    expect([added?.action, added?.fields, more]).toEqual(['added', [], []])
    const removed = async () => (await bench.done('change.list', { only: 'removed' })).map(({ label }) => label)
    await bench.done('tool.remove', { id: other.id, version: 1 })
    expect(await removed()).toEqual(['other'])
    await bench.done('change.undo', {})
    expect(await removed()).toEqual([])
  })
})

import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Bench, codesOf, openOwnBench, temporaryFolder, toolDraft, toolsOf } from './support.ts'

let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
let ids: readonly string[]
beforeEach(async () => {
  folder = temporaryFolder()
  bench = await openOwnBench(folder.folder)
  ids = [
    (await bench.done('tool.add', toolDraft)).value.id,
    (await bench.done('tool.add', toolDraft)).value.id,
    (await bench.done('tool.add', toolDraft)).value.id,
  ]
})
afterEach(async () => {
  await bench.workshop.close()
  folder.remove()
})

const holders = async () => (await toolsOf(bench)).map(({ holder }) => holder)
const people = async () => (await bench.done('person.list', {})).map(({ name }) => name)

describe('lending', () => {
  it('gives several tools to a new person as one change, taken back as one', async () => {
    await bench.done('loan.lend', { toolIds: ids.slice(0, 2), person: 'Wren Oddly', dueBack: '2030-01-31' })
    expect(await holders()).toEqual(['Wren Oddly', 'Wren Oddly', ''])
    await bench.done('change.undo', {})
    expect([await holders(), await people()]).toEqual([['', '', ''], []])
  })

  it('knows a person again, whatever the capitals', async () => {
    await bench.done('loan.lend', { toolIds: ids.slice(0, 1), person: 'Wren Oddly' })
    await bench.done('loan.lend', { toolIds: ids.slice(1, 2), person: ' wren oddly ' })
    expect(await people()).toEqual(['Wren Oddly'])
    await bench.done('loan.return', { toolIds: ids.slice(0, 2) })
    for (const [k, person] of ['Éva', 'éva', 'E\u0301va'].entries())
      await bench.done('loan.lend', { toolIds: ids.slice(k, k + 1), person })
    expect(await people()).toEqual(['Wren Oddly', 'Éva'])
  })

  it('of a tool that somebody has is refused with who has it, and lends none of the others', async () => {
    await bench.done('loan.lend', { toolIds: ids.slice(1, 2), person: 'Wren Oddly' })
    expect(await bench.call('loan.lend', { toolIds: [...ids], person: 'Nib' })).toMatchObject({
      problems: [{ code: 'alreadyLent', params: { code: '02', holder: 'Wren Oddly' } }],
    })
    expect([await holders(), await people()]).toEqual([['', 'Wren Oddly', ''], ['Wren Oddly']])
  })

  it('is over when the tool is given back, and can begin again', async () => {
    const lend = () => bench.done('loan.lend', { toolIds: ids.slice(0, 1), person: 'Nib' })
    await lend()
    await bench.done('loan.return', { toolIds: ids.slice(0, 1) })
    expect((await holders())[0]).toBe('')
    expect(codesOf(await bench.call('loan.return', { toolIds: ids.slice(0, 1) }))).toEqual(['notLent'])
    await lend()
    expect((await holders())[0]).toBe('Nib')
  })

  it('of a giving back taken back finds the tool lent again', async () => {
    await bench.done('loan.lend', { toolIds: ids.slice(0, 1), person: 'Nib' })
    await bench.done('loan.return', { toolIds: ids.slice(0, 1) })
    await bench.done('change.undo', {})
    expect((await holders())[0]).toBe('Nib')
  })
})

describe('places', () => {
  const place = async (name: string, parentId: string | null = null) =>
    (await bench.done('place.add', { name, parentId })).value

  it('never stand in themselves, and no deeper than six', async () => {
    const chain = [await place('1')]
    for (const name of ['2', '3', '4', '5', '6']) chain.push(await place(name, chain.at(-1)?.id ?? null))
    const [first, second] = chain
    const last = chain.at(-1)
    expect(codesOf(await bench.call('place.add', { name: '7', parentId: last?.id ?? null }))).toEqual(['placesTooDeep'])
    const into = { id: first?.id ?? '', version: 1, draft: { name: '1', parentId: second?.id ?? null } }
    expect(codesOf(await bench.call('place.edit', into))).toEqual(['placesTooDeep'])
    const other = await place('other')
    const under = { id: first?.id ?? '', version: 1, draft: { name: '1', parentId: other.id } }
    expect(codesOf(await bench.call('place.edit', under))).toEqual(['placesTooDeep'])
  })

  it('are not taken away while something is in them', async () => {
    const room = await place('room')
    const drawer = await place('drawer', room.id)
    const { value: tool } = await bench.done('tool.add', { ...toolDraft, placeId: drawer.id })
    expect(await bench.call('place.remove', { id: room.id, version: 1 })).toMatchObject({
      problems: [{ code: 'placeInUse', params: { tools: 0, places: 1 } }],
    })
    expect(codesOf(await bench.call('place.remove', { id: drawer.id, version: 1 }))).toEqual(['placeInUse'])
    await bench.done('tool.remove', { id: tool.id, version: 1 })
    await bench.done('place.remove', { id: drawer.id, version: 1 })
    await bench.done('place.remove', { id: room.id, version: 1 })
    expect(await bench.done('place.list', {})).toEqual([])
  })
})

it('what names a record that does not stand is refused at its field', async () => {
  const nobody = '00000000-0000-4000-8000-00000000ffff'
  const refused = await bench.call('tool.add', { ...toolDraft, placeId: nobody })
  expect(refused).toMatchObject({ problems: [{ code: 'noLongerThere', path: 'placeId' }] })
  const happening = { toolId: nobody, kind: 'honed' as const, at: '2026-01-01T00:00:00.000Z' }
  expect(await bench.call('happening.add', happening)).toMatchObject({ problems: [{ path: 'toolId' }] })
})

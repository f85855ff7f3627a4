import { beforeEach, describe, expect, it } from 'vitest'
import { benchForEach } from './benchForEach.ts'
import { codesOf, squareDraft, stationDraft, steeredDraft, toolDraft, toolsOf } from './support.ts'

const bench = benchForEach()

describe('tools, stations and fixtures', () => {
  it('gives back every field that was put in', async () => {
    const tool = (await bench().done('tool.add', { ...toolDraft, note: 'ß ½ "quoted"', seatAngleDeg: null })).value
    const station = (await bench().done('station.add', stationDraft)).value
    const fixture = (await bench().done('fixture.add', squareDraft)).value
    expect(tool).toEqual({
      ...toolDraft,
      note: 'ß ½ "quoted"',
      seatAngleDeg: null,
      id: tool.id,
      code: '01',
      version: 1,
    })
    expect(await toolsOf(bench())).toMatchObject([tool])
    expect(await bench().done('station.list', {})).toEqual([
      { ...stationDraft, id: station.id, code: 'S1', version: 1 },
    ])
    expect(await bench().done('fixture.list', {})).toEqual([{ ...squareDraft, id: fixture.id, code: 'F1', version: 1 }])
  })

  it('counts the version up at an edit, and refuses an edit of one that is not the newest', async () => {
    const { value: tool } = await bench().done('tool.add', toolDraft)
    const edited = await bench().done('tool.edit', { id: tool.id, version: 1, draft: { ...toolDraft, widthMm: 61 } })
    expect(edited.value).toMatchObject({ version: 2, widthMm: 61, code: '01' })
    expect(codesOf(await bench().call('tool.edit', { id: tool.id, version: 1, draft: toolDraft }))).toEqual([
      'conflict',
    ])
    expect(codesOf(await bench().call('tool.remove', { id: tool.id, version: 1 }))).toEqual(['conflict'])
    expect(await toolsOf(bench())).toMatchObject([edited.value])
  })

  it('lists codes by number beyond the ninety-ninth, and gives none again after a removal', async () => {
    for (let i = 0; i < 101; i += 1) await bench().done('tool.add', toolDraft)
    const tools = await toolsOf(bench())
    expect(tools.map(({ code }) => code).slice(-3)).toEqual(['99', '100', '101'])
    const last = tools.at(-1)
    await bench().done('tool.remove', { id: last?.id ?? '', version: 1 })
    expect((await bench().done('tool.add', toolDraft)).value.code).toBe('102')
  })

  it('says that a removed record is no longer there', async () => {
    const { value } = await bench().done('fixture.add', steeredDraft)
    await bench().done('fixture.remove', { id: value.id, version: 1 })
    expect(await bench().done('fixture.list', {})).toEqual([])
    expect(codesOf(await bench().call('fixture.edit', { id: value.id, version: 2, draft: steeredDraft }))).toEqual([
      'noLongerThere',
    ])
  })

  it('tells every client which record changed, and nobody of what failed', async () => {
    bench().events.length = 0
    const { value } = await bench().done('station.add', stationDraft)
    await bench().call('station.remove', { id: value.id, version: 7 })
    expect(bench().events).toEqual([{ type: 'changed', noun: 'station', ids: [value.id] }])
  })
})

describe('search', () => {
  beforeEach(async () => {
    const placeAt = async (name: string) => (await bench().done('place.add', { name })).value.id
    await bench().done('tool.add', {
      ...toolDraft,
      name: 'Block iron',
      note: 'from Zoë Ångrick',
      placeId: await placeAt('apron shelf'),
    })
    await bench().done('tool.add', { ...toolDraft, name: 'Jack iron', placeId: await placeAt('long bench') })
    await bench().done('tool.add', {
      ...toolDraft,
      name: 'Chisel 100%',
      kind: 'chisel',
      placeId: await placeAt('drawer_2'),
    })
  })

  it.each([
    ['iron', ['01', '02']],
    ['SHELF', ['01']],
    ['zoe angrick', ['01']],
    ['ångrick', ['01']],
    ['02', ['02']],
    ['iron bench', ['02']],
    ['100%', ['03']],
    ['drawer_2', ['03']],
    ['ben', ['02']],
    ['try plane', ['01', '02']],
    ['chis drawer', ['03']],
    ['ench', []],
    ['" OR "', []],
    ['  ', ['01', '02', '03']],
  ])('finds %j', async (search, codes) => {
    const found = await toolsOf(bench(), search)
    expect(found.map(({ code }) => code)).toEqual(codes)
  })
})

describe('settings', () => {
  it('are the defaults until changed, and keep what was set', async () => {
    expect(await bench().done('settings.get', {})).toEqual({
      language: 'en',
      lengthUnit: 'mm',
      theme: 'system',
      singleKeys: 'on',
      stayAwake: 'on',
      columns: '',
      copiesMostMb: 500,
    })
    await bench().done('settings.edit', { lengthUnit: 'inch', theme: 'dark' })
    await bench().done('settings.edit', { lengthUnit: 'thou', theme: 'dark', singleKeys: 'off' })
    expect(await bench().done('settings.get', {})).toEqual({
      language: 'en',
      lengthUnit: 'thou',
      theme: 'dark',
      singleKeys: 'off',
      stayAwake: 'on',
      columns: '',
      copiesMostMb: 500,
    })
    await bench().done('change.undo', {})
    expect((await bench().done('settings.get', {})).lengthUnit).toBe('inch')
    await bench().done('change.undo', {})
    expect((await bench().done('settings.get', {})).lengthUnit).toBe('mm')
    await bench().done('settings.edit', { lengthUnit: 'thou', theme: 'light' })
    expect(await bench().done('settings.get', {})).toMatchObject({ lengthUnit: 'thou', theme: 'light' })
  })
})

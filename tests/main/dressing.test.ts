import { expect, it } from 'vitest'
import { benchForEach } from './benchForEach.ts'
import { codesOf, stationDraft } from './support.ts'

const bench = benchForEach()

const newStation = async () =>
  (await bench().done('station.add', { ...stationDraft, measuredAt: '2020-01-01T08:00:00.000Z' })).value
const wheel = async () => {
  const [station] = await bench().done('station.list', {})
  return [station?.wheelDiameterMm, station?.measuredAt]
}

it('a dressing makes the wheel what was measured; an older one noted late does not; one undo takes both back', async () => {
  const { id } = await newStation()
  const dressed = { stationId: id, kind: 'dressed' as const, diameterMm: 246, barMm: 71.5, who: 'Wren' }
  const { changeId } = await bench().done('dressing.add', { ...dressed, at: '2020-03-01T08:00:00.000Z' })
  expect(await wheel()).toEqual([246, '2020-03-01T08:00:00.000Z'])
  await bench().done('dressing.add', { ...dressed, diameterMm: 249, at: '2020-02-01T08:00:00.000Z' })
  expect(await wheel()).toEqual([246, '2020-03-01T08:00:00.000Z'])
  expect((await bench().done('dressing.list', { stationId: id })).map(({ diameterMm }) => diameterMm)).toEqual([
    246, 249,
  ])
  await bench().done('change.undo', { id: changeId })
  expect(await wheel()).toEqual([250, '2020-01-01T08:00:00.000Z'])
  expect((await bench().done('dressing.list', { stationId: id })).map(({ diameterMm }) => diameterMm)).toEqual([249])
})

it('a wheel measured anew anywhere is a line of its log, other edits are none', async () => {
  const { id } = await newStation()
  const at = '2020-04-01T08:00:00.000Z'
  const draft = { ...stationDraft, wheelDiameterMm: 244, measuredAt: at }
  await bench().done('station.edit', { id, version: 1, draft })
  await bench().done('station.edit', { id, version: 2, draft: { ...draft, name: 'Wet wheel by the window' } })
  expect(await bench().done('dressing.list', { stationId: id })).toMatchObject([
    { kind: 'measured', diameterMm: 244, at },
  ])
})

it('a dressing of a station that is gone is refused at its field', async () => {
  const { id } = await newStation()
  await bench().done('station.remove', { id, version: 1 })
  const asked = { stationId: id, kind: 'dressed' as const, diameterMm: 246, at: '2020-03-01T08:00:00.000Z' }
  expect(codesOf(await bench().call('dressing.add', asked))).toEqual(['noLongerThere'])
})

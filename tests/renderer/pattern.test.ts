import { describe, expect, it } from 'vitest'
import { patternOf, readPattern } from '../../renderer/rack/toolSheet/pattern.ts'
import { toolDraft } from '../main/support.ts'

const [here, gone] = ['00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000002'] as const
const standing = { places: new Set<string>([here]), purposes: new Set<string>([here]) }
const curve = (purposeId: string) => ({ purposeId, reliefMm: 0.1, shavingDepthMm: 0.05 })
const read = (draft: object) => readPattern(JSON.stringify(draft), standing)

describe('a pattern', () => {
  it('gives what irons of a kind have alike, and nothing of the one it was kept from', () => {
    const draft = { ...toolDraft, note: 'chipped once', condition: 'worn', lengthLeftMm: 40, placeId: here } as const
    const begin = read(patternOf(draft))
    expect(begin).toMatchObject({ ok: true, value: { kind: 'try', widthMm: 60, placeId: here } })
    for (const key of ['name', 'note', 'condition', 'lengthLeftMm', 'own'])
      expect(begin).not.toHaveProperty(['value', key])
  })

  it('leaves out what is not sound, and what another version of the program may have written', () => {
    expect(read({ widthMm: -3, steel: 'blue', colour: 'red', seatAngleDeg: 'steep' })).toEqual({
      ok: true,
      value: { steel: 'blue' },
    })
  })

  it('leaves out places and purposes that were taken away since', () => {
    expect(read({ placeId: gone, curves: [curve(gone), curve(here)] })).toEqual({
      ok: true,
      value: { placeId: null, curves: [curve(here)] },
    })
  })

  it.each(['', '{', '[]', 'null', '7'])('that is no pattern says so: %s', (text) => {
    expect(readPattern(text, standing)).toMatchObject({ ok: false, problems: [{ code: 'patternDamaged' }] })
  })
})

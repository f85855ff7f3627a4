import { describe, expect, it } from 'vitest'
import { type Queued, queueOrder } from '../../main/work/queueOrder.ts'

const iron = (code: string, change: Partial<Queued> = {}): Queued => ({
  code,
  stationCode: 'S1',
  fixtureCode: 'F1',
  barDistanceMm: 200,
  freePlayMm: 0.8,
  face: 'curved',
  ...change,
})
const codes = (irons: readonly Queued[]) => queueOrder(irons).map((placed) => placed.iron.code)
const whys = (irons: readonly Queued[]) => queueOrder(irons).map(({ why }) => why.map(({ code }) => code).join())

describe('the order of a day', () => {
  it('is straight irons while the face is true, curved ones, roughing ones last, and says so', () => {
    const irons = [iron('01', { face: 'rough' }), iron('02'), iron('03', { face: 'straight', freePlayMm: 0 })]
    expect(codes(irons)).toEqual(['03', '02', '01'])
    expect(whys(irons)).toEqual(['straight,first', 'sameBar', 'rough,sameAll'])
  })

  it('goes by where the bar stands, and among one bar by free play, then by code as numbers go', () => {
    const irons = [
      iron('9', { barDistanceMm: 203 }),
      iron('100', { barDistanceMm: 200.08 }),
      iron('11', { barDistanceMm: 200, freePlayMm: 1.6 }),
      iron('20', { barDistanceMm: 200.04 }),
    ]
    expect(codes(irons)).toEqual(['20', '100', '11', '9'])
    expect(whys(irons)).toEqual(['first', 'sameAll', 'sameBar', 'barOut'])
    expect(queueOrder(irons)[3]?.why[0]?.params).toEqual({ byMm: 3 })
  })

  it('measures one bar from the first of its group, so that small steps never add up to a large one', () => {
    const steps = [0, 0.07, 0.14, 0.21].map((mm, i) =>
      iron(`0${i + 1}`, { barDistanceMm: 200 + mm, freePlayMm: 4 - i }),
    )
    expect(codes(steps)).toEqual(['02', '01', '04', '03'])
  })

  it('lets the bar travel back from where it stands when the next group of irons begins', () => {
    const irons = [
      iron('01', { face: 'straight', barDistanceMm: 190 }),
      iron('02', { face: 'straight', barDistanceMm: 210 }),
      iron('03', { barDistanceMm: 195 }),
      iron('04', { barDistanceMm: 205 }),
    ]
    expect(codes(irons)).toEqual(['01', '02', '04', '03'])
    expect(whys(irons)).toEqual(['straight,first', 'barOut', 'barIn', 'barIn'])
  })

  it('keeps to a wheel, and to the fixture at hand, before anything else', () => {
    const irons = [
      iron('01', { fixtureCode: 'F1' }),
      iron('02', { fixtureCode: 'F2' }),
      iron('03', { fixtureCode: 'F2', face: 'straight' }),
      iron('04', { stationCode: 'S2', fixtureCode: 'F1', face: 'straight' }),
      iron('05', { stationCode: 'S2', fixtureCode: 'F0', face: 'straight' }),
    ]
    expect(codes(irons)).toEqual(['03', '02', '01', '04', '05'])
    expect(whys(irons)).toEqual(['straight,first', 'sameAll', 'otherFixture', 'straight,otherStation', 'otherFixture'])
  })

  it('is the same however the irons come', () => {
    const irons = Array.from({ length: 24 }, (_, i) =>
      iron(String(i + 10), {
        stationCode: `S${i % 2}`,
        fixtureCode: `F${i % 3}`,
        barDistanceMm: 190 + ((i * 7) % 5) * 0.06 + ((i * 5) % 4) * 6,
        freePlayMm: (i * 3) % 4,
        face: (['straight', 'curved', 'rough'] as const)[i % 3] ?? 'curved',
      }),
    )
    const order = codes(irons)
    for (const shift of [1, 5, 17]) expect(codes([...irons.slice(shift), ...irons.slice(0, shift)])).toEqual(order)
    expect(codes(irons.toReversed())).toEqual(order)
  })
})

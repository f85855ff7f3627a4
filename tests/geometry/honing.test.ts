import { describe, expect, it } from 'vitest'
import { colourAt, softening, temperColours } from '../../geometry/heat.ts'
import { hollowLastsMm, honingsLeft, secondaryWidthMm } from '../../geometry/honing.ts'
import { radFromDeg } from '../../geometry/units.ts'

const honing = (wheelRadiusMm: number) => ({ wheelRadiusMm, bevelRad: radFromDeg(25), honedRad: radFromDeg(30) })

describe('honing', () => {
  it('flat bevel 25 honed at 30: 0.05 mm back is 0.05 x 0.422618 / 0.087156 = 0.24245 mm wide', () => {
    expect(secondaryWidthMm(honing(1e9), 0.05)).toBeCloseTo(0.24245, 5)
  })

  it('the width found lies on the wheel', () => {
    const width = secondaryWidthMm(honing(125), 0.1) as number
    const [v, n] = [0.1 + width * Math.cos(radFromDeg(30)), width * 0.5]
    const [cv, cn] = [-125 * Math.sin(radFromDeg(25)), 125 * Math.cos(radFromDeg(25))]
    expect(Math.hypot(v - cv, n - cn)).toBeCloseTo(125, 9)
  })

  it('heel 6.5 mm, 3.2 thick, honed at 30: 6.5 - 3.2 / 0.57735 = 0.95744 mm, 19 honings of 0.05', () => {
    const lasts = hollowLastsMm(6.5, 3.2, radFromDeg(30))
    expect(lasts).toBeCloseTo(0.95744, 5)
    expect([honingsLeft(lasts, 0.05), honingsLeft(-1, 0.05)]).toEqual([19, 0])
  })
})

describe('heat', () => {
  it('each colour is 10 F above the last, from 430 F', () => {
    for (const [i, { celsius }] of temperColours.entries())
      expect(celsius).toBeCloseTo(((430 + 10 * i - 32) * 5) / 9, 0)
    expect([colourAt(200), colourAt(240)?.code]).toEqual([null, 'straw'])
  })

  it('purple softens O1, not M2; straw perhaps O1', () => {
    expect([softening('O1', 280), softening('M2', 280), softening('O1', 238)]).toEqual([
      'softened',
      'safe',
      'perhapsSoftened',
    ])
  })
})

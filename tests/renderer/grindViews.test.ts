import { expect, test } from 'vitest'
import { inkLeftShare } from '../../geometry/ink.ts'
import { curvePath, wantedAt } from '../../renderer/grind/curves.ts'
import { acrossScale, depthScale, factorText, reliefSizePx } from '../../renderer/grind/glassScale.ts'
import { packLabels } from '../../renderer/grind/packLabels.ts'
import { highest, touchingColumns } from '../../renderer/grind/touching.ts'

test('labels with room stand where they wish to', () => {
  expect(
    packLabels(
      [
        { wishPx: 100, heightPx: 40 },
        { wishPx: 300, heightPx: 60 },
      ],
      0,
      500,
      10,
    ),
  ).toEqual([80, 270])
})

test('labels that would collide give way, and stay in the column', () => {
  const wishes = [90, 100, 95, 480].map((wishPx) => ({ wishPx, heightPx: 50 }))
  const places = packLabels(wishes, 8, 500, 10)
  const sorted = [...places].sort((a, b) => a - b)
  for (let k = 1; k < sorted.length; k++) {
    expect((sorted[k] as number) - (sorted[k - 1] as number)).toBeGreaterThanOrEqual(60)
  }
  expect(Math.min(...places)).toBeGreaterThanOrEqual(8)
  expect(Math.max(...places) + 50).toBeLessThanOrEqual(500)
  // Their order is that of their wishes: 90, 95, 100, 480.
  expect((places[0] as number) < (places[2] as number) && (places[2] as number) < (places[1] as number)).toBe(true)
})

test('the depth is magnified by the largest round factor that fits', () => {
  // 0.5 mm at 96 px to the inch is 1.8898 px; times 50 is 94.5 px, times 100 is 189 px.
  expect(depthScale(0.5, 150).factor).toBe(50)
  expect(depthScale(0.5, 190).factor).toBe(100)
  expect(depthScale(0.5, 190).pxPerMm).toBeCloseTo(377.95, 2)
})

test('across, the blade fills the view', () => {
  const scale = acrossScale(57, 342)
  expect(scale.pxPerMm).toBe(6)
  expect(factorText(scale.factor)).toBe('1.6')
  expect(factorText(99.6)).toBe('100')
})

test('the relief figures are as large as leaves the curves in sight', () => {
  // 0.50 in a plot of 390 px: 2 x (4 x 0.52 x 56 + 28) = 289 of 351 px. 0.0197: 405 px, at 40 px 306.
  expect(reliefSizePx(390, 4)).toBe(56)
  expect(reliefSizePx(390, 6)).toBe(40)
  expect(reliefSizePx(190, 6)).toBe(28)
})

test('the wanted arc lies back by the relief at both corners and nowhere ahead', () => {
  expect(wantedAt(0, 57, 0.5)).toBe(0)
  expect(wantedAt(28.5, 57, 0.5)).toBeCloseTo(0.5, 12)
  expect(wantedAt(-28.5, 57, 0.5)).toBeCloseTo(0.5, 12)
  // An arc is about a quarter back halfway out.
  expect(wantedAt(14.25, 57, 0.5) / 0.5).toBeCloseTo(0.25, 3)
  expect(wantedAt(20, 57, 0)).toBe(0)
})

test('a curve is drawn from its foremost point', () => {
  const scale = { leftMm: -10, acrossPxPerMm: 2, depthPxPerMm: 100, topPx: 5 }
  const v = [0.3, 0.1, 0.2]
  expect(curvePath([-10, 0, 10], (i) => v[i] as number, scale)).toBe('M0.00 25.00L20.00 5.00L40.00 15.00')
})

test('touching columns', () => {
  expect(touchingColumns([0, 0, 1, 0, 2, 0])).toEqual([2, 4])
  expect(touchingColumns([0, 0])).toBeNull()
  expect(highest([0, 3, 2])).toBe(3)
})

test('ink counts end nodes half, and goes with a third of a micrometre', () => {
  const field = { acrossCount: 3, throughCount: 3, vStartMm: new Float64Array(9), vMm: new Float64Array(9) }
  expect(inkLeftShare(field)).toBe(1)
  field.vMm[4] = 0.00029
  expect(inkLeftShare(field)).toBe(1)
  field.vMm[4] = 0.00031
  expect(inkLeftShare(field)).toBe(0.75)
  field.vMm[0] = 1
  expect(inkLeftShare(field)).toBe(0.6875)
})

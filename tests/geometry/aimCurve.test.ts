import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type AimCurve, aimCurveOver } from '../../geometry/aimCurve.ts'
import { found } from './example.ts'

const WIDTH = 57
const at = (curve: AimCurve, uMm: number, widthMm = WIDTH) => found(aimCurveOver(curve, widthMm))(uMm)

describe('a wanted curve', () => {
  it('an arc is a piece of a circle: all its points are as far from one centre', () => {
    const arc = (uMm: number) => at({ kind: 'arc', reliefMm: 4 }, uMm)
    const radiusMm = (28.5 ** 2 + 4 ** 2) / 8
    for (const u of [-28.5, -11, 0, 3, 28.5]) expect(Math.hypot(u, radiusMm - arc(u))).toBeCloseTo(radiusMm, 10)
  })

  it('a parabola has a quarter of the relief halfway out, eased corners what a parabola has from the end of the flat', () => {
    expect(at({ kind: 'parabola', reliefMm: 0.4 }, 28.5 / 2)).toBeCloseTo(0.1, 12)
    const eased: AimCurve = { kind: 'easedCorners', reliefMm: 0.4, flatShare: 0.6 }
    // Flat to 0.6 x 28.5 = 17.1; halfway from there to the corner, at 22.8, a quarter of the relief.
    expect(at(eased, 17.1)).toBeCloseTo(0, 15)
    expect(at(eased, -17)).toBe(0)
    expect(at(eased, 22.8)).toBeCloseTo(0.1, 12)
  })

  it('eased corners leave the straight without a kink: the slope just past its end is as small as the step', () => {
    const eased: AimCurve = { kind: 'easedCorners', reliefMm: 0.4, flatShare: 0.5 }
    const flatMm = 14.25
    // v = 0.4 (x / 14.25)^2, so a step of 1 um climbs 2e-9 mm.
    expect(at(eased, flatMm + 1e-3) - at(eased, flatMm)).toBeCloseTo(0.4 * (1e-3 / 14.25) ** 2, 15)
  })

  it('rises evenly from its middle to the relief at both corners, whatever the curve (seed 11)', () => {
    const curves = fc.oneof(
      fc.record({
        kind: fc.constantFrom('arc' as const, 'parabola' as const),
        reliefMm: fc.double({ min: 0, max: 3, noNaN: true }),
      }),
      fc.record({
        kind: fc.constant('easedCorners' as const),
        reliefMm: fc.double({ min: 0, max: 3, noNaN: true }),
        flatShare: fc.double({ min: 0, max: 0.9, noNaN: true }),
      }),
    )
    fc.assert(
      fc.property(curves, fc.double({ min: 6, max: 120, noNaN: true }), (curve, widthMm) => {
        const half = widthMm / 2
        expect(at(curve, 0, widthMm)).toBe(0)
        expect(at(curve, half, widthMm)).toBeCloseTo(curve.reliefMm, 9)
        const shares = [0, 0.2, 0.4, 0.6, 0.8, 1]
        const values = shares.map((share) => at(curve, share * half, widthMm))
        for (let k = 1; k < values.length; k++) expect(values[k]).toBeGreaterThanOrEqual(values[k - 1] as number)
        expect(shares.map((share) => at(curve, -share * half, widthMm))).toEqual(values)
      }),
      { seed: 11, numRuns: 200 },
    )
  })

  it.each([
    [{ kind: 'arc', reliefMm: -0.1 }, 'tooSmall'],
    [{ kind: 'arc', reliefMm: Number.NaN }, 'tooSmall'],
    [{ kind: 'arc', reliefMm: 28.6 }, 'reliefTooGreat'],
    [{ kind: 'easedCorners', reliefMm: 0.3, flatShare: 0.95 }, 'tooLarge'],
    [{ kind: 'easedCorners', reliefMm: 0.3, flatShare: -0.1 }, 'tooSmall'],
  ] as const)('refuses %j', (curve, code) => {
    const result = aimCurveOver(curve, WIDTH)
    expect(result.ok ? null : result.problems[0]?.code).toBe(code)
  })
})

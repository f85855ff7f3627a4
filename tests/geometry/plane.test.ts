import { describe, expect, it } from 'vitest'
import { anglesInUse, capAdvice, jointOf, skewedDeg } from '../../geometry/plane.ts'
import {
  crownMm,
  mirroredProfile,
  type Profile,
  profileOf,
  skewedProfile,
  turnedProfile,
} from '../../geometry/profile.ts'
import { cornersIn, cutOf, fillBoard, ridgeMm } from '../../geometry/shaving.ts'

/** A parabola of some relief on 57 mm, a point each tenth of a millimetre. */
const arc = (reliefMm: number): Profile => {
  const uMm = Array.from({ length: 571 }, (_, i) => i / 10 - 28.5)
  return { uMm, behindMm: uMm.map((u) => (reliefMm * u * u) / 28.5 ** 2) }
}

describe('the edge in the plane', () => {
  it('0.5 mm at a 12 degree seat is 0.104 mm: set at 0.1 the corners stay out, set at 0.2 they stand 0.096 in the wood', () => {
    const sine = 0.20791169
    // A parabola is cut where u < 28.5 sqrt(0.1 / 0.10396) = 27.953; its area is 2/3 of width x depth.
    const cut = cutOf(arc(0.5), 0.1, sine)
    expect(cut.widthMm).toBeCloseTo(55.907, 2)
    expect([cut.leftMm, cut.rightMm]).toEqual([expect.closeTo(-27.953, 2), expect.closeTo(27.953, 2)])
    expect(cut.areaMm2).toBeCloseTo((2 / 3) * 55.907 * 0.1, 3)
    expect(cutOf(arc(0.5), 0, sine)).toMatchObject({ widthMm: 0, areaMm2: 0, thickestMm: 0 })
    expect(cornersIn(arc(0.5), 0.1, sine, 200)).toEqual({ leftMm: 0, rightMm: 0 })
    expect(cornersIn(arc(0.5), 0.2, sine, 200).rightMm).toBeCloseTo(0.096044, 6)
    expect(cornersIn(arc(0.5), 0.2, sine, 50)).toEqual({ leftMm: 0, rightMm: 0 })
  })

  it('the lower of two passes counts at each place: 14.25 mm from both middles the board lies 0.2 - 0.125 x 0.5 lower', () => {
    const after = new Float64Array(4).fill(9)
    fillBoard(after, arc(0.5), [0, 28.5], 0.2, 0.5, [0, 14.25, 28.5, 60])
    expect([...after]).toEqual([0.2, expect.closeTo(0.1375, 4), 0.2, 0])
  })

  it('passes 28.5 mm apart leave a quarter of the relief as ridge: 0.5 / 4 = 0.125 mm, through the sine 0.5 0.0625', () => {
    expect(ridgeMm(arc(0.5), 28.5, 0.5)).toBeCloseTo(0.0625, 3)
    expect(ridgeMm(arc(0.5), 58, 0.5)).toBeNull()
  })

  it('the lever: 0.1 degree moves the crown of 0.05 mm on 57 mm by 8122.5 x 0.00174533 = 14.2 mm to the left', () => {
    expect(crownMm(arc(0.05))).toBe(0)
    expect(crownMm(turnedProfile(arc(0.05), 0.1))).toBeCloseTo(-14.2, 6)
  })

  it('turned over, what was left is right; depths count from the foremost point', () => {
    const edge = profileOf([-10, 0, 20], [3.1, 3, 3.4])
    expect(mirroredProfile(edge)).toEqual({
      uMm: [-20, -0, 10],
      behindMm: [0.4, 0, 0.1].map((v) => expect.closeTo(v, 12)),
    })
  })

  it('45 degrees at 45 of skew work as 35.26, a 50 mm iron covers 35.36', () => {
    expect(skewedDeg(45, 45)).toBeCloseTo(35.2644, 4)
    expect(skewedProfile(profileOf([-25, 25], [0, 0]), 45).uMm[1]).toBeCloseTo(35.3553 / 2, 4)
  })

  it('jointing 20 mm shifted by 5: chord slope 2 x 0.1 x 5 / 28.5^2 = 0.00123115, x sin 45 = 0.04988 degrees', () => {
    expect(jointOf(arc(0.1), 20, 5, Math.SQRT1_2)?.angleDeg).toBeCloseTo(0.04988, 4)
    expect(jointOf(arc(0.1), 20, 0, Math.SQRT1_2)?.angleDeg).toBeCloseTo(0, 12)
    expect(jointOf(arc(0.1), 20, 25, Math.SQRT1_2)).toBeNull()
  })

  it('the hollow left across 20 mm by 0.07 of relief is (10 / 28.5)^2 x 0.07 x 0.7071 = 0.0061 mm (common practice: harmless)', () => {
    expect(jointOf(arc(0.07), 20, 0, Math.SQRT1_2)?.hollowMm).toBeCloseTo(0.0061, 4)
  })

  it('a cap iron set back no further than the relief reaches beyond the corners', () => {
    expect([capAdvice(0.3, 0.1), capAdvice(0.1, 0.1)]).toEqual(['capClear', 'capBeyondCorners'])
  })

  it.each([
    [12, 38, 50],
    [20, 40, 60],
  ])('bevel up, %f + %f = %f (R. Porter 2010)', (seatAngleDeg, honedDeg, pitchDeg) => {
    const angles = anglesInUse({ seatAngleDeg, bevelSide: 'up', honedDeg, backBevelDeg: 2 })
    expect(angles).toEqual({ pitchDeg, clearanceDeg: seatAngleDeg - 2 })
  })

  it('bevel down 45, honed 30, back bevel 10: pitch 55, clearance 15', () => {
    const angles = anglesInUse({ seatAngleDeg: 45, bevelSide: 'down', honedDeg: 30, backBevelDeg: 10 })
    expect(angles).toEqual({ pitchDeg: 55, clearanceDeg: 15 })
  })
})

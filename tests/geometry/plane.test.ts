import { describe, expect, it } from 'vitest'
import {
  anglesInUse,
  capAdvice,
  crownMm,
  jointingDeg,
  type Profile,
  ridgeMm,
  shavingSection,
  skewedDeg,
  swathMm,
  turnedProfile,
} from '../../geometry/plane.ts'

/** A parabola of some relief on 57 mm, a point each tenth of a millimetre. */
const arc = (reliefMm: number): Profile => {
  const uMm = Array.from({ length: 571 }, (_, i) => i / 10 - 28.5)
  return { uMm, behindMm: uMm.map((u) => (reliefMm * u * u) / 28.5 ** 2) }
}

describe('the edge in the plane', () => {
  it('0.5 mm at a 12 degree seat is 0.104 mm: set at 0.1 the corners do not cut, the middle cuts 0.1', () => {
    const section = shavingSection(arc(0.5), 0.1, 0.20791169)
    expect([section[0]?.thicknessMm, section[285]?.thicknessMm]).toEqual([0, 0.1])
    expect(shavingSection(arc(0.5), 0.2, 0.20791169)[0]?.thicknessMm).toBeCloseTo(0.096044, 6)
  })

  it('passes 28.5 mm apart leave a quarter of the relief as ridge: 0.5 / 4 = 0.125 mm, through the sine 0.5 0.0625', () => {
    expect(ridgeMm(arc(0.5), 28.5, 0.5)).toBeCloseTo(0.0625, 3)
    expect(ridgeMm(arc(0.5), 58, 0.5)).toBeNull()
  })

  it('the lever: 0.1 degree moves the crown of 0.05 mm on 57 mm by 8122.5 x 0.00174533 = 14.2 mm to the left', () => {
    expect(crownMm(arc(0.05))).toBe(0)
    expect(crownMm(turnedProfile(arc(0.05), 0.1))).toBeCloseTo(-14.2, 6)
  })

  it('45 degrees at 45 of skew work as 35.26, a 50 mm iron covers 35.36', () => {
    expect(skewedDeg(45, 45)).toBeCloseTo(35.2644, 4)
    expect(swathMm(50, 45)).toBeCloseTo(35.3553, 4)
  })

  it('jointing 20 mm shifted by 5: chord slope 2 x 0.1 x 5 / 28.5^2 = 0.00123115, x sin 45 = 0.04988 degrees', () => {
    expect(jointingDeg(arc(0.1), 20, 5, Math.SQRT1_2)).toBeCloseTo(0.04988, 4)
    expect(jointingDeg(arc(0.1), 20, 0, Math.SQRT1_2)).toBeCloseTo(0, 12)
    expect(jointingDeg(arc(0.1), 20, 25, Math.SQRT1_2)).toBeNull()
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

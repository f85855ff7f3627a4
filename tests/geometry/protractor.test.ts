import { expect, it } from 'vitest'
import { hollowOf } from '../../geometry/hollow.ts'
import { bevelAngles } from '../../geometry/protractor.ts'
import { bevelAtEdge, setUpOf } from '../../geometry/setUp.ts'
import type { SteelLine } from '../../geometry/straightedge.ts'
import { degFromRad, radFromDeg } from '../../geometry/units.ts'
import { exampleJob, found, ground } from './example.ts'

const THICK_MM = 3.2
const RADIUS_MM = 125
const section = (backAt: (n: number) => number, points = 17): SteelLine => {
  const atMm = Array.from({ length: points }, (_, j) => (THICK_MM * j) / (points - 1))
  return { atMm, backMm: atMm.map(backAt) }
}
const rim = (n: number): number =>
  Math.sqrt(RADIUS_MM ** 2 - (n - RADIUS_MM * Math.cos(radFromDeg(25))) ** 2) - RADIUS_MM * Math.sin(radFromDeg(25))
const deg = ({ tipRad, chordRad, foundRad }: ReturnType<typeof bevelAngles>) =>
  [tipRad, chordRad, ...foundRad].map(degFromRad) as [number, number, number, number]

it('a hollow of a wheel of 250 at 25 degrees: tip 25, chord and protractor as the circular segment has them', () => {
  const angles = bevelAngles(section(rim))
  const { chordAngleDeg, chordMm } = hollowOf(RADIUS_MM, radFromDeg(25), THICK_MM)
  const [tip, chord, least, most] = deg(angles)
  expect(tip).toBeCloseTo(25, 2)
  expect(chord).toBeCloseTo(chordAngleDeg, 10)
  expect(angles.chordMm).toBeCloseTo(chordMm, 10)
  expect([least, most]).toEqual([chord, chord])
  expect(chord - tip).toBeGreaterThan(1.5)
})

it('a flat bevel has one angle', () => {
  for (const found of deg(bevelAngles(section((n) => n / Math.tan(radFromDeg(30)))))) expect(found).toBeCloseTo(30, 10)
})

it('a protractor rocks on a bevel with a steeper edge: it finds 30 degrees at the edge and 25 at the heel, never the chord alone', () => {
  const [at30, at25] = [1 / Math.tan(radFromDeg(30)), 1 / Math.tan(radFromDeg(25))]
  const [tip, chord, least, most] = deg(
    bevelAngles(section((n) => (n <= 0.8 ? n * at30 : 0.8 * at30 + (n - 0.8) * at25))),
  )
  expect(tip).toBeCloseTo(30, 10)
  expect(least).toBeCloseTo(25, 10)
  expect(most).toBeCloseTo(30, 10)
  expect(chord).toBeGreaterThan(25)
  expect(chord).toBeLessThan(30)
})

it('on a ground blade the tip is where the wheel stands at the edge as it has receded', () => {
  const job = exampleJob({ motion: { sweeps: 200 }, grid: { across: 57, through: 17 } })
  const { vMm, nMm, throughCount, acrossCount } = ground(job)
  const from = ((acrossCount - 1) / 2) * throughCount
  const column = { atMm: nMm, backMm: vMm.slice(from, from + throughCount) }
  const wheelDeg = degFromRad(bevelAtEdge(found(setUpOf(job)), vMm[from] as number))
  expect(wheelDeg).toBeGreaterThan(25.02)
  expect(Math.abs(degFromRad(bevelAngles(column).tipRad) - wheelDeg)).toBeLessThan(0.15)
})

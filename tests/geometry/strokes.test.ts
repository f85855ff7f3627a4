import { describe, expect, it } from 'vitest'
import { mirroredProfile, profileOf, profileReliefMm } from '../../geometry/profile.ts'
import { countOf, hone, KEEPS, middleOnly, usualStrokes } from '../../geometry/strokes.ts'

const arc = (reliefMm: number, widthMm: number) => {
  const uMm = Array.from({ length: 81 }, (_, i) => (i / 80 - 0.5) * widthMm)
  return profileOf(
    uMm,
    uMm.map((u) => reliefMm * ((2 * u) / widthMm) ** 2),
  )
}
const smoothing = arc(0.07, 50)
const SET_BACK_MM = 0.02
const reliefAfter = (strokes: typeof usualStrokes, edge = smoothing) =>
  profileReliefMm(hone(edge, strokes, SET_BACK_MM).profile)

describe('strokes on a stone', () => {
  it('2 x 5 + 2 x 3 + 2 are 18', () => {
    expect([countOf(usualStrokes), middleOnly(usualStrokes)]).toEqual([18, { corner: 0, halfway: 0, middle: 18 }])
  })

  it('the strokes of common practice keep the curve within a tenth', () => {
    expect(reliefAfter(usualStrokes) / 0.07).toBeGreaterThan(0.9)
    expect(reliefAfter(usualStrokes) / 0.07).toBeLessThan(1.1)
    expect(reliefAfter({ corner: 4, halfway: 2, middle: 1 }) / 0.07).toBeLessThan(1.1)
  })

  it('so they do, in any mix, on every iron of 0.05 mm of relief and more at 0.02 mm of set-back, whatever its width', () => {
    const mixes = [4, 5, 6].flatMap((corner) =>
      [2, 3].flatMap((halfway) => [1, 2].map((middle) => ({ corner, halfway, middle }))),
    )
    const irons = [[KEEPS.leastReliefMm, 44] as const, [0.14, 60] as const, [0.24, 50] as const, [0.5, 57] as const]
    for (const [relief, width] of irons)
      for (const strokes of mixes) {
        const after = profileReliefMm(hone(arc(relief, width), strokes, KEEPS.mostSetBackMm).profile)
        expect(Math.abs(after / relief - 1), `${relief} x ${width}, ${JSON.stringify(strokes)}`).toBeLessThan(0.1)
      }
  })

  it.each([
    [0.03, 60, 1.09, 1.12],
    [0.14, 60, 0.94, 0.96],
    [0.24, 50, 0.94, 0.96],
    [0.5, 57, 0.96, 0.98],
  ])('0.02 mm off %d mm of relief on %d mm leaves between %d and %d of it', (relief, width, least, most) => {
    const share = reliefAfter(usualStrokes, arc(relief, width)) / relief
    expect(share).toBeGreaterThan(least)
    expect(share).toBeLessThan(most)
  })

  it('a honing beyond that set-back does not: 0.05 mm takes an eighth off 0.14 mm', () => {
    expect(profileReliefMm(hone(arc(0.14, 60), usualStrokes, 0.05).profile) / 0.14).toBeCloseTo(0.875, 2)
  })

  it('middle strokes alone flatten it by a quarter and more, corner strokes alone deepen it', () => {
    expect(reliefAfter(middleOnly(usualStrokes))).toBeLessThan(0.75 * 0.07)
    expect(reliefAfter({ corner: 9, halfway: 0, middle: 0 })).toBeGreaterThan(0.07)
  })

  it('take the steel they were told to: 50 mm x 0.02 mm, shared or not', () => {
    const { profile, setBackMm } = hone(smoothing, usualStrokes, SET_BACK_MM)
    const areaOf = (values: readonly number[]) =>
      values.slice(1).reduce((sum, v, i) => sum + ((v + (values[i] as number)) / 2) * (50 / 80), 0)
    const taken = areaOf(profile.behindMm) + setBackMm * 50 - areaOf(smoothing.behindMm)
    expect(taken).toBeCloseTo(50 * SET_BACK_MM, 6)
  })

  it('leave left and right alike, and a lopsided edge lopsided the other way when mirrored', () => {
    const { behindMm } = hone(smoothing, usualStrokes, SET_BACK_MM).profile
    for (const [i, v] of behindMm.entries()) expect(v).toBeCloseTo(behindMm[80 - i] as number, 9)
    const lopsided = profileOf(
      smoothing.uMm,
      smoothing.behindMm.map((v, i) => v + i * 0.0005),
    )
    const there = hone(lopsided, usualStrokes, SET_BACK_MM).profile
    const back = hone(mirroredProfile(lopsided), usualStrokes, SET_BACK_MM).profile
    for (const [i, v] of there.behindMm.entries()) expect(v).toBeCloseTo(back.behindMm[80 - i] as number, 6)
  })

  it('no stroke changes nothing', () => {
    expect(hone(smoothing, { corner: 0, halfway: 0, middle: 0 }, SET_BACK_MM)).toEqual({
      profile: smoothing,
      setBackMm: 0,
    })
  })
})

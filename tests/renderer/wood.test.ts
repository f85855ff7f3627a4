import { describe, expect, it } from 'vitest'
import { parseJob } from '../../geometry/parseJob.ts'
import { profileOf } from '../../geometry/profile.ts'
import type { Report } from '../../geometry/report.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { knownEdges } from '../../renderer/wood/edges.ts'
import { sectionLayout } from '../../renderer/wood/sectionLayout.ts'
import { seenBy } from '../../renderer/wood/seen.ts'
import { asItLies } from '../../renderer/wood/setting.ts'
import { toolDraft } from '../main/support.ts'

const report = ((): Report => {
  const parsed = parseJob({
    version: 1,
    blade: { widthMm: 60, thicknessMm: 3, seatAngleDeg: 30, bevelSide: 'down' },
    station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
    fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8 },
    aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.4, shavingDepthMm: 0.1 },
    motion: { sweeps: 4 },
    grid: { across: 21, through: 5 },
  })
  const solved = parsed.ok ? solveJob(parsed.value) : parsed
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems))
  return solved.value
})()

const tool = (changes: Partial<Tool> = {}): Tool => ({
  ...toolDraft,
  id: '00000000-0000-4000-8000-000000000001',
  code: 'T1',
  version: 1,
  seatAngleDeg: 30,
  capSetbackMm: 0.5,
  ...changes,
})

/** 0.2 mm behind at the left, 0.6 at the right: lopsided, so that a side changed over shows. */
const lopsided = profileOf([-30, 0, 30], [0.2, 0, 0.6])

describe('the edge as the wood meets it', () => {
  it('bevel down left is left; a bevel-up iron lies turned over, dot and all', () => {
    const down = seenBy(lopsided, tool(), report, asItLies)
    const up = seenBy(lopsided, tool({ bevelSide: 'up' }), report, asItLies)
    expect([down?.profile.behindMm[0], down?.dot]).toEqual([0.2, 'left'])
    expect([up?.profile.behindMm[0], up?.dot]).toEqual([0.6, 'right'])
    expect(up?.cap).toBeNull()
  })

  it('sees half the relief at a 30 degree seat; a cap iron at 0.5 clears corners at 0.4, at 0.4 it does not', () => {
    const seen = seenBy(lopsided, tool(), report, asItLies)
    expect(seen?.camberMm).toBeCloseTo(0.2, 12)
    expect(seen?.cap?.advice).toBe('capClear')
    expect(seenBy(lopsided, tool({ capSetbackMm: 0.4 }), report, asItLies)?.cap?.advice).toBe('capBeyondCorners')
  })

  it('takes honed and back bevel into pitch and clearance: 30 + 5, 30 - 28', () => {
    const seen = seenBy(lopsided, tool({ honedBevelDeg: 28, backBevelDeg: 5 }), report, asItLies)
    expect([seen?.pitchDeg, seen?.clearanceDeg]).toEqual([35, 2])
  })

  it('knows the wanted and predicted edges, and the newest reading that shows one', () => {
    expect(knownEdges(report, []).map(({ key }) => key)).toEqual(['wanted', 'predicted'])
    const wanted = knownEdges(report, [])[0]
    expect(wanted?.profile.behindMm[0]).toBeCloseTo(0.4, 9)
  })

  it('is drawn to scale: 0.1 mm deep at x 500 is 0.1 x 500 x 96 / 25.4 px below the surface', () => {
    const seen = seenBy(lopsided, tool(), report, asItLies)
    if (!seen) throw new Error('has a seat')
    const layout = sectionLayout(seen, 20, 150, 900, 340)
    expect(layout.depth).toBe(500)
    expect(layout.crown[1] - layout.surfacePx).toBeCloseTo((0.1 * 500 * 96) / 25.4, 9)
    expect(layout.crown[0]).toBe(layout.middlePx)
    // A pass 20 mm to the left was made before: the board there is down to the same depth already.
    const there = layout.middlePx - (20 * layout.across * 96) / 25.4
    const near = layout.before.reduce((a, b) => (Math.abs(b[0] - there) < Math.abs(a[0] - there) ? b : a))
    expect(near[1]).toBeGreaterThan(layout.surfacePx + 0.9 * (layout.crown[1] - layout.surfacePx))
  })
})

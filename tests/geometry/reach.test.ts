import { describe, expect, it } from 'vitest'
import type { JobInput } from '../../geometry/job.ts'
import { pathOf } from '../../geometry/motion.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { reachLimitMm, reliefPerMm3 } from '../../geometry/reach.ts'
import { solveJob } from '../../geometry/solveJob.ts'

const WIDTH_MM = 57
/** Steps of a period fine enough for the closed forms, which are for an endless number. */
const FINE = 4000

const fine = (f: (part: number) => number): Float64Array => Float64Array.from({ length: FINE }, (_, k) => f(k / FINE))
const threePosition = (share: number) =>
  fine((part) => (Math.abs(part - 0.25) < share / 2 ? 1 : Math.abs(part - 0.75) < share / 2 ? -1 : 0))

describe('how far the fingers may reach', () => {
  it.each([
    ['sinusoid, pi w / 8', fine((part) => Math.sin(2 * Math.PI * part)), (Math.PI * WIDTH_MM) / 8],
    ['triangle, w / 2', fine((part) => 1 - 4 * Math.abs(part - 0.5)), WIDTH_MM / 2],
    ['three positions of a quarter each, w (1 - p) / 2', threePosition(0.25), (WIDTH_MM * 0.75) / 2],
    ['three positions of four tenths each', threePosition(0.4), (WIDTH_MM * 0.6) / 2],
  ])('%s', (_, path, limitMm) => {
    expect(reachLimitMm(path, WIDTH_MM)).toBeCloseTo(limitMm, 1)
  })

  it('is the width where the load never leaves the middle', () => {
    expect(reachLimitMm(new Float64Array(48), WIDTH_MM)).toBeCloseTo(WIDTH_MM, 4)
  })

  it('lets nothing grow within the limit', () => {
    const path = fine((part) => Math.sin(2 * Math.PI * part))
    expect(reliefPerMm3(path, 22, WIDTH_MM, 3.2)).toBe(0)
    expect(reliefPerMm3(path, 23, WIDTH_MM, 3.2)).toBeCloseTo((24 * (23 * (2 / Math.PI) - 57 / 4)) / (57 * 57 * 3.2), 6)
  })
})

const straight = (fingerReachMm: number): JobInput => ({
  version: 1,
  blade: { widthMm: WIDTH_MM, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up' },
  station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
  fixture: { kind: 'freehand', seatOffsetMm: 15 },
  aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0 },
  motion: { fingerReachMm, sweeps: 10, stepsPerSweep: 12 },
  grid: { across: 21, through: 5 },
})

const cautionsOf = (input: JobInput): readonly string[] => {
  const job = parseJob(input)
  const report = job.ok ? solveJob(job.value) : job
  if (!report.ok) throw new Error(JSON.stringify(report.problems))
  return report.value.cautions.map(({ code }) => code)
}

describe('a straight edge without stops', () => {
  it('is warned of where the fingers go beyond the limit, and only there', () => {
    const job = parseJob(straight(20))
    if (!job.ok) throw new Error('not a job')
    const limitMm = reachLimitMm(pathOf(job.value.motion), WIDTH_MM)
    expect(cautionsOf(straight(limitMm - 0.1))).not.toContain('cornersWearFaster')
    expect(cautionsOf(straight(limitMm + 0.1))).toContain('cornersWearFaster')
  })
})

import { describe, expect, it } from 'vitest'
import { radiusOfRelief, reliefOfRadius } from '../../geometry/aim.ts'
import type { JobInput } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { sin } from '../../geometry/trigonometry.ts'
import { MM_PER_INCH, MM_PER_THOU, radFromDeg, rimSpeedMPerS } from '../../geometry/units.ts'

/** Figures that others have published, each with where it stands. */
describe('circular segments', () => {
  it('MatheAss help, "Circular Sections": chord 21, height 6 gives radius 12.1875', () => {
    expect(radiusOfRelief(21, 6)).toBe(12.1875)
  })

  it('G. Baril, "Spherometry Equations": radius 10 in over a half chord of 3.5 in, r = a^2 / 2s + s / 2', () => {
    const sagittaIn = reliefOfRadius(7, 10)
    expect(3.5 ** 2 / (2 * sagittaIn) + sagittaIn / 2).toBeCloseTo(10, 12)
  })

  it('J. Loomis, "Sags and Edge Thickness": curvature 0.0104227 over a semi-aperture of 9, z = c r^2 / (1 + sqrt(1 - (c r)^2))', () => {
    const c = 0.0104227
    expect(reliefOfRadius(18, 1 / c)).toBeCloseTo((c * 81) / (1 + Math.sqrt(1 - (c * 9) ** 2)), 9)
  })

  it('TM 9-867 (1945) and Popular Woodworking no. 153 (2006) agree: a jack crowned 1/16 in over 2 in has a radius of about 8 in', () => {
    expect(radiusOfRelief(2, 1 / 16)).toBeCloseTo(8, 1)
    expect(reliefOfRadius(2, 8)).toBeCloseTo(1 / 16, 3)
  })
})

describe('rim speed', () => {
  it('a school exercise: 5 in at 1,200 rpm is 1,570 ft/min', () => {
    expect((rimSpeedMPerS(5 * MM_PER_INCH, 1200) * 60) / 0.3048).toBeCloseTo(1570.8, 1)
  })

  it.each([
    [125, 80, 12_200],
    [10, 16, 30_500],
    [13, 16, 23_500],
    [16, 16, 19_000],
  ])(
    'EN 12413 speed table: %i mm at %i m/s may turn at %i rpm (the table rounds down to hundreds)',
    (mm, mPerS, rpm) => {
      expect(Math.floor(mPerS / rimSpeedMPerS(mm, 1) / 100) * 100).toBe(rpm)
    },
  )
})

describe('units', () => {
  it('NBS Circular 572, addendum of 1959: 1 in is 25.4 mm exactly; GNU units: a thou is 0.001 in', () => {
    expect(MM_PER_INCH).toBe(25.4)
    expect(MM_PER_THOU * 1000).toBeCloseTo(25.4, 12)
  })

  it('NIST SP 811, B.8: a degree is 1.745329 E-02 rad', () => {
    expect(radFromDeg(1)).toBeCloseTo(1.745329e-2, 8)
  })
})

const woodViewAt = (seatAngleDeg: number, bevelAngleDeg: number, bevelSide: 'up' | 'down') => {
  const input: JobInput = {
    version: 1,
    blade: { widthMm: 50, thicknessMm: 3, seatAngleDeg, bevelSide },
    station: { wheelDiameterMm: 250, wheelWidthMm: 60, barDiameterMm: 12 },
    fixture: { kind: 'square', seatOffsetMm: 15 },
    aim: { bevelAngleDeg, projectionMm: 130, reliefMm: 0 },
    motion: { sweeps: 1, stepsPerSweep: 4 },
    grid: { across: 5, through: 3 },
  }
  const job = parseJob(input)
  const report = job.ok ? solveJob(job.value) : job
  if (!report.ok) throw new Error(JSON.stringify(report.problems))
  return report.value.woodView
}

describe('hand planes', () => {
  it.each([
    [12, 33, 45],
    [12, 38, 50],
    [12, 48, 60],
    [20, 25, 45],
    [20, 30, 50],
    [20, 40, 60],
  ])('R. Porter (2010): bevel up, seat %i and bevel %i make a pitch of %i', (seat, bevel, pitch) => {
    expect(woodViewAt(seat, bevel, 'up')?.pitchDeg).toBeCloseTo(pitch, 9)
  })

  it('Hasluck, "The Handyman\'s Book": common pitch is 45, whatever the bevel below it', () => {
    expect(woodViewAt(45, 25, 'down')?.pitchDeg).toBe(45)
  })

  it('R. Porter (2009): 0.005 in of camber at a 45 degree seat is 0.0035 in for the wood', () => {
    expect(0.005 * sin(radFromDeg(45))).toBeCloseTo(0.0035, 4)
  })
})

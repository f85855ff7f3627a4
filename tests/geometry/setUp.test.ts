import { describe, expect, it } from 'vitest'
import { hollowOf } from '../../geometry/hollow.ts'
import { setUpOf, setUpReport } from '../../geometry/setUp.ts'
import { radFromDeg } from '../../geometry/units.ts'
import { exampleJob, found } from './example.ts'

describe('the set-up triangle', () => {
  it('gives the bar and its sensitivities of the worked example', () => {
    const job = exampleJob()
    const report = setUpReport(job, found(setUpOf(job)))
    expect(report.barDistanceMm).toBeCloseTo(207.57273, 5)
    expect(report.bevelPerProjectionDegPerMm).toBeCloseTo(-0.67495, 5)
    expect(report.bevelPerBarDistanceDegPerMm).toBeCloseTo(0.76631, 5)
    expect(report.bevelPerWheelDiameterDegPerMm).toBeCloseTo(-0.30705, 5)
  })

  it('finds the same bevel and projection back from the other two', () => {
    const { barDistanceMm } = found(setUpOf(exampleJob()))
    const bevel = found(setUpOf({ ...exampleJob(), aim: { ...exampleJob().aim, bevelAngleDeg: null, barDistanceMm } }))
    const reach = found(setUpOf({ ...exampleJob(), aim: { ...exampleJob().aim, projectionMm: null, barDistanceMm } }))
    expect(bevel.bevelRad).toBeCloseTo(radFromDeg(25), 12)
    expect(reach.projectionMm).toBeCloseTo(130, 10)
  })
})

describe('the hollow', () => {
  it('keeps the segment formula: b + asin(c / 2R) is the chord angle', () => {
    const { chordMm, chordAngleDeg } = hollowOf(125, radFromDeg(25), 3.2)
    expect(chordAngleDeg).toBeCloseTo(25 + (Math.asin(chordMm / 250) * 180) / Math.PI, 9)
  })
})

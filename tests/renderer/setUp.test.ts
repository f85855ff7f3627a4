import { describe, expect, it } from 'vitest'
import { firstInkOf } from '../../geometry/firstInk.ts'
import type { Job } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { setUpOf, setUpReport } from '../../geometry/setUp.ts'
import { barDistanceOf, measureOf } from '../../main/contract/barMeasure.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { ironMarks, type RuleMark, ruleMarks } from '../../renderer/setUp/ironMarks.ts'
import { matchOf } from '../../renderer/setUp/match.ts'
import { labelledMarks, labelPx } from '../../renderer/setUp/ruleLabels.ts'
import { afterWear } from '../../renderer/setUp/wear.ts'
import { toolDraft } from '../main/support.ts'

const job = ((): Job => {
  const parsed = parseJob({
    version: 1,
    blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up' },
    station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
    fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8 },
    aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5 },
  })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  return parsed.value
})()
const figures = (() => {
  const setUp = setUpOf(job)
  if (!setUp.ok) throw new Error('no set-up')
  return setUpReport(job, setUp.value)
})()

describe('ways to measure the bar', () => {
  const mount = { wheelDiameterMm: 250, barDiameterMm: 12, barOffsetMm: 0 }

  it('axle to bar 207.57: gap 207.57 - 125 - 6 = 76.57, to the top 207.57 - 125 + 6 = 88.57, to the underside 76.57', () => {
    expect(measureOf('gap', mount, 207.57)).toBeCloseTo(76.57, 9)
    expect(measureOf('heightToTop', mount, 207.57)).toBeCloseTo(88.57, 9)
    expect(measureOf('heightToUnderside', mount, 207.57)).toBeCloseTo(76.57, 9)
  })

  it('a bar 60 mm beside the axle line at 205 from it stands sqrt(205^2 - 60^2) = 196.02 up: 77.02 to its top', () => {
    const beside = { ...mount, barOffsetMm: 60 }
    expect(measureOf('heightToTop', beside, 205)).toBeCloseTo(196.0229 - 125 + 6, 3)
    expect(measureOf('gap', beside, 205)).toBeCloseTo(74, 9)
  })

  it.each(['gap', 'heightToTop', 'heightToUnderside'] as const)('%s goes back to where the bar was', (measure) => {
    const beside = { ...mount, barOffsetMm: 37 }
    expect(barDistanceOf(measure, beside, measureOf(measure, beside, 213.4))).toBeCloseTo(213.4, 9)
  })
})

describe('after wear', () => {
  it('keeps nothing where nothing was lost', () => {
    const after = afterWear(job, figures, 250)
    expect(after.leftDeg).toBeCloseTo(25, 9)
    expect(after.sameGapDeg).toBeCloseTo(25, 9)
    expect(after.barMovesMm).toBeCloseTo(0, 9)
    expect(after.projectionMovesMm).toBeCloseTo(0, 9)
  })

  it('2 mm off the diameter: bar left, 2 x the sensitivity; moved as told, the old bevel again', () => {
    const after = afterWear(job, figures, 248)
    expect((after.leftDeg ?? 0) - 25).toBeCloseTo(-2 * figures.bevelPerWheelDiameterDegPerMm, 1)
    const setUp = setUpOf({
      ...job,
      station: { ...job.station, wheelDiameterMm: 248 },
      aim: { ...job.aim, projectionMm: null, barDistanceMm: figures.barDistanceMm },
    })
    expect(setUp.ok && setUp.value.projectionMm - 130).toBeCloseTo(after.projectionMovesMm ?? 9, 9)
    expect((after.gapMm ?? 0) + 124 + 6).toBeCloseTo(figures.barDistanceMm + (after.barMovesMm ?? 0), 9)
  })
})

describe('the rule of irons', () => {
  const iron = (code: string, bevelAngleDeg: number): Tool => ({
    ...toolDraft,
    id: `00000000-0000-4000-8000-0000000000${code}`,
    code,
    version: 1,
    bevelAngleDeg,
    thicknessMm: 3.2,
  })

  it('an iron at the job’s own bevel has the job’s projection; one that cannot be ground so has none', () => {
    const marks = ironMarks(job, figures.barDistanceMm, [iron('01', 25)])
    expect(marks[0]?.projectionMm).toBeCloseTo(130, 6)
    expect(ironMarks(job, 590, [iron('02', 25)])[0]?.projectionMm).toBeNull()
  })

  const standing = (projectionsMm: readonly number[]): readonly RuleMark[] =>
    ruleMarks(
      projectionsMm.map((projectionMm, k) => ({ tool: iron(String(k + 10), 25), projectionMm })),
      null,
    )
  const paper = {
    rows: 6,
    endPx: 1200,
    xPx: (mm: number) => 24 + (mm - 80) * 8,
    say: (codes: readonly string[], more: number) => codes.join(', ') + (more === 0 ? '' : ` +${more}`),
  }
  const codes = (marks: readonly RuleMark[]) => marks.map(({ irons }) => irons.map(({ tool }) => tool.code).join(' '))

  it('irons within 0.3 mm of the first stand under one mark, in its middle; the one in hand is named first', () => {
    const marks = standing([100.5, 100, 100.3, 100.29])
    expect(codes(marks)).toEqual(['11 12 13', '10'])
    expect(marks[0]?.projectionMm).toBeCloseTo(100.15, 9)
    const irons = ['11', '12'].map((code) => ({ tool: iron(code, 25), projectionMm: 100 }))
    expect(codes(ruleMarks(irons, irons[1]?.tool.id ?? ''))).toEqual(['12 11'])
    expect(ruleMarks([{ tool: iron('11', 25), projectionMm: null }], null)).toEqual([])
  })

  it('3 irons apart: each has its label at the rule; a mark of several is written out where there is room', () => {
    const marks = labelledMarks(standing([90, 90.1, 90.2, 120, 150]), paper)
    expect(marks.map(({ row, label }) => [row, label])).toEqual([
      [0, '10, 11, 12'],
      [0, '13'],
      [0, '14'],
    ])
  })

  it('a mark close to the next one says how many more there are, and none is labelled beyond the end', () => {
    const close = labelledMarks(standing([90, 90.1, 90.2, 97]), paper)
    expect(close.map(({ label }) => label)).toEqual(['10 +2', '13'])
    expect(labelledMarks(standing([90]), { ...paper, endPx: 110 })[0]).toMatchObject({ row: null, label: '' })
  })

  it.each([3, 12, 60])('%i irons: each under one mark, no label on another or across a mark', (count) => {
    // Crowded in the middle, as a rack of like irons is: 130 +- 12 mm, in steps that never repeat.
    const projectionsMm = Array.from({ length: count }, (_, k) => 130 + 12 * Math.sin(k * k))
    const marks = labelledMarks(standing(projectionsMm), paper)
    expect(marks.flatMap(({ irons }) => irons)).toHaveLength(count)
    const written = marks.filter(({ row }) => row !== null)
    expect(written.length).toBeGreaterThanOrEqual(Math.min(count, 10))
    for (const { xPx, row, label } of written) {
      const crossed = written.filter((other) => other.xPx > xPx && other.xPx < xPx + labelPx(label))
      expect(crossed.filter((other) => (other.row ?? 0) >= (row ?? 0))).toEqual([])
    }
  })
})

describe('the move for a match', () => {
  it.each([23, 25, 28, 30, 32])(
    'a bevel of %i is met in its middle by what is told, to a tenth of a millimetre',
    (bevelDeg) => {
      const { projectionMovesMm, barMovesMm } = matchOf(job, figures, bevelDeg)
      const tenth = (mm: number | null) => Number((mm ?? Number.NaN).toFixed(1))
      const inkWith = (aim: Partial<Job['aim']>) => {
        const blade = { ...job.blade, currentBevelDeg: bevelDeg }
        const ink = firstInkOf({ ...job, blade, aim: { ...job.aim, bevelAngleDeg: null, ...aim } })
        if (!ink.ok) throw new Error(JSON.stringify(ink.problems))
        const { from, to } = ink.value.columns[14] ?? {}
        return { verdict: ink.value.verdict, middle: ((from ?? Number.NaN) + (to ?? Number.NaN)) / 2 }
      }
      const inTheMiddle = { verdict: 'match', middle: expect.closeTo(0.5, 1) }
      const { projectionMm, barDistanceMm } = figures
      expect(inkWith({ projectionMm: projectionMm + tenth(projectionMovesMm), barDistanceMm })).toEqual(inTheMiddle)
      expect(inkWith({ projectionMm, barDistanceMm: barDistanceMm + tenth(barMovesMm) })).toEqual(inTheMiddle)
    },
  )

  it('a move that the triangle does not allow is not told', () => {
    expect(matchOf(job, figures, 75).projectionMovesMm).toBeNull()
  })
})

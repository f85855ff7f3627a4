import { describe, expect, test } from 'vitest'
import type { MeasuredEdge } from '../../geometry/measure.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { type BenchLog, methods, type Tool } from '../../main/contract/entities.ts'
import { createTexts } from '../../main/texts.ts'
import { glassLayout } from '../../renderer/glass/glassLayout.ts'
import { deepestMeasuredMm, measuredOf } from '../../renderer/grind/views/measured.ts'
import { changeSheet, sheetOf, takenOf, useBench } from '../../renderer/measure/bench.ts'
import { lastTimeOf, takeAgain } from '../../renderer/measure/lastTime.ts'
import { measuredCurve } from '../../renderer/measure/measuredCurve.ts'
import { readOfLine, type Taken } from '../../renderer/measure/read.ts'
import {
  against,
  edgeOfLeaves,
  type Leaves,
  leavesOfCard,
  nextStage,
  noLeaves,
  spanOf,
} from '../../renderer/measure/reading.ts'
import { heldAgainst, sentenceOf } from '../../renderer/measure/sentence.ts'
import { showing } from '../../renderer/measure/shown.ts'
import { straightedgeLayout, touchOf } from '../../renderer/measure/straightedgeLayout.ts'
import { deservedText, shapeWordOf } from '../../renderer/measure/words.ts'
import { figuresIn } from '../../renderer/ui/useFigure.ts'

const WIDTH_MM = 57
const STEP_MM = 0.02
const IRON = { widthMm: WIDTH_MM, seatAngleDeg: 12 }
const takenBy = (typed: Leaves): Taken => ({ method: 'leaves', leaves: typed, points: [], stepMm: STEP_MM })

const leaves = (leftMm: number, halfwayMm: number | null, rightMm: number): Leaves => ({ leftMm, halfwayMm, rightMm })
const edge = (...taken: Parameters<typeof leaves>): MeasuredEdge => {
  const read = edgeOfLeaves(leaves(...taken), STEP_MM, WIDTH_MM)
  if (!read?.ok) throw new Error(JSON.stringify(read))
  return read.value
}
const line = (changes: Partial<BenchLog> = {}): BenchLog => ({
  id: '00000000-0000-4000-8000-000000000001',
  code: 'L1',
  version: 1,
  toolId: '00000000-0000-4000-8000-000000000002',
  jobId: null,
  stage: 'asFound',
  reliefLeftMm: 0.5,
  reliefRightMm: 0.5,
  reliefHalfwayMm: 0.12,
  leafStepMm: STEP_MM,
  method: 'leaves',
  points: null,
  groundMinutes: null,
  setBackMm: null,
  squareGapMm: null,
  squareOverMm: null,
  counts: 'yes',
  stationId: null,
  fixtureId: null,
  task: null,
  sweeps: null,
  freePlayLeftMm: null,
  freePlayRightMm: null,
  modelReliefMm: null,
  who: '',
  note: '',
  at: '2026-11-25T09:00:00.000Z',
  engineVersion: null,
  ...changes,
})

describe('other ways of measuring', () => {
  const arc = [-28, -14, 0, 14, 28].map((uMm) => ({ uMm, gapMm: 0.2 + 0.004 * uMm + (0.5 * uMm * uMm) / 28.5 ** 2 }))

  test('points show relief and shape with the tilt taken out, squares where they were read, and a span of two errors', () => {
    const read = readOfLine(line({ method: 'points', points: arc }), IRON)
    expect(read?.edge.shape).toBe('arc')
    expect(read?.edge.reliefMm).toBeCloseTo(0.5, 9)
    expect(read?.curve.marks[2]).toEqual({ uMm: 0, leastMm: expect.closeTo(0, 9), mostMm: expect.closeTo(STEP_MM, 9) })
    const error = read?.edge.standardErrorMm ?? 0
    expect(read?.span).toEqual([expect.closeTo(0.5 - 2 * error, 9), expect.closeTo(0.5 + 2 * error, 9)])
  })

  test('two points ask for a third; shavings of a tool without a seat show nothing', () => {
    const two: Taken = { method: 'points', leaves: noLeaves, points: arc.slice(0, 2), stepMm: STEP_MM }
    expect(showing(two, [line()], IRON)).toEqual({ shown: null, problems: [], begun: true })
    const three = line({ method: 'shavings', points: arc.slice(0, 3) })
    expect(readOfLine(three, { widthMm: WIDTH_MM, seatAngleDeg: null })).toBeNull()
  })

  test('shavings of 0.05 in the middle and 0.03 at both sides, 20 mm out: 0.02 / (20 / 28.5)^2 / sin 12 = 0.195', () => {
    const points = [-20, 0, 20].map((uMm) => ({ uMm, gapMm: uMm === 0 ? 0.05 : 0.03 }))
    expect(readOfLine(line({ method: 'shavings', points }), IRON)?.edge.reliefMm).toBeCloseTo(0.1953, 4)
  })
})

describe('as last time', () => {
  const points = [-20, 0, 20].map((uMm) => ({ uMm, gapMm: Math.abs(uMm) / 100 }))
  const log = (['leaves', 'trace', 'points', 'shavings', 'points', 'leaves'] as const).map((method, i) =>
    line({ method, code: `L${i}`, points: method === 'leaves' ? null : points }),
  )

  test.each(methods)('the newest reading by %s comes back whole, with its step', (method) => {
    const last = lastTimeOf(log, method)
    expect(last?.code).toBe(`L${log.findIndex((each) => each.method === method)}`)
    if (!last) return
    changeSheet(last.toolId, { method })
    takeAgain(last, 'As last time')
    const taken = takenOf(sheetOf(last.toolId), useBench.getState().stepsMm, IRON)
    expect(taken.stepMm).toBe(STEP_MM)
    expect(method === 'leaves' ? taken.leaves : taken.points).toEqual(
      method === 'leaves' ? leaves(0.5, 0.12, 0.5) : points,
    )
  })

  test('is not offered where nothing was measured so, or its points were not kept', () => {
    expect(lastTimeOf([line()], 'points')).toBeUndefined()
    expect(lastTimeOf([line({ method: 'trace', points: null })], 'trace')).toBeUndefined()
  })
})

describe('a line of the log', () => {
  test('shows again what its leaves showed', () => {
    expect(readOfLine(line(), IRON)?.edge).toEqual(edge(0.5, 0.12, 0.5))
  })

  test('shows nothing where a corner or the step of the leaves was not noted', () => {
    expect(readOfLine(line({ leafStepMm: null }), IRON)).toBeNull()
    expect(readOfLine(line({ reliefRightMm: null }), IRON)).toBeNull()
  })

  test.each([
    [undefined, 'asFound'],
    [line({ at: '2026-11-24T09:00:00.000Z', stage: 'asGround' }), 'asFound'],
    [line(), 'asGround'],
    [line({ stage: 'asGround' }), 'asHoned'],
    [line({ stage: 'asHoned' }), 'asHoned'],
  ])('the reading after %o is likely %s', (newest, stage) => {
    expect(nextStage(newest, new Date('2026-11-25T12:00:00.000Z'))).toBe(stage)
  })
})

describe('against wanted and predicted', () => {
  // A leaf of 0.50 passes, one of 0.52 does not: the gap lies between.
  test.each([
    [0.5, 'as', 0],
    [0.52, 'as', 0],
    [0.498, 'as', 0],
    [0.45, 'more', 0.05],
    [0.6, 'less', 0.08],
  ])('0.50 to 0.52 against %f: %s', (otherMm, verdict, byMm) => {
    const told = against(spanOf(edge(0.5, null, 0.5), STEP_MM), otherMm)
    expect(told.verdict).toBe(verdict)
    expect(told.byMm).toBeCloseTo(byMm, 9)
  })

  test('unequal leaves span what they leave open, and a step: 0.32 and 0.72 are an arc of 0.50 or a roof of 0.52', () => {
    const [least, most] = spanOf(edge(0.32, null, 0.72), STEP_MM)
    expect([least, most].map((mm) => mm.toFixed(6))).toEqual(['0.500000', '0.540000'])
  })
})

describe('the measured curve', () => {
  const depthAt = (curve: ReturnType<typeof measuredCurve>, share: number) =>
    curve.line?.find(([u]) => Math.abs(u - (share * WIDTH_MM) / 2) < 1e-9)?.[1]

  test.each([
    [0.125, 'arc'],
    [0.235, 'roof'],
    [0.18, 'between'],
    [0.4, 'neither'],
  ])('goes through crown, halfway %f and corners: %s', (halfwayMm, shape) => {
    const taken = edge(0.5, halfwayMm, 0.5)
    expect(taken.shape).toBe(shape)
    const curve = measuredCurve(taken, STEP_MM, WIDTH_MM)
    expect(depthAt(curve, 0)).toBeCloseTo(0, 12)
    for (const side of [-1, 1]) {
      expect(depthAt(curve, side)).toBeCloseTo(0.5, 12)
      expect(depthAt(curve, side / 2)).toBeCloseTo(halfwayMm, 12)
    }
    expect(curve.taken).toBe(false)
  })

  test('is taken as an arc where halfway was not taken', () => {
    const curve = measuredCurve(edge(0.5, null, 0.5), STEP_MM, WIDTH_MM)
    expect(curve.taken).toBe(true)
    expect(depthAt(curve, 0.5)).toBeCloseTo(0.125, 12)
    expect(curve.marks).toHaveLength(2)
  })

  test('of unequal leaves is none: only how far back the corners may lie', () => {
    const curve = measuredCurve(edge(0, 0.2, 2), STEP_MM, WIDTH_MM)
    expect(curve.line).toBeNull()
    // Resting on a corner: an arc of 0.5 or a roof of 1.
    expect(curve.marks.map(({ leastMm, mostMm }) => [leastMm, mostMm])).toEqual([
      [0.5, 1.02],
      [0.5, 1.02],
    ])
  })

  test('fits into the glass with its whiskers, in one scale with what is wanted', () => {
    const measured = measuredCurve(edge(2, null, 2), STEP_MM, WIDTH_MM)
    const wanted = { reliefMm: 0.5, edgeRadiusMm: 812.5 }
    const layout = glassLayout({ widthMm: WIDTH_MM, wanted, predicted: null, measured }, 520, 200)
    for (const { at, toPx } of layout.squares) {
      expect(toPx).toBeGreaterThan(at[1])
      expect(toPx).toBeLessThan(layout.floorPx)
    }
    // Four times the wanted relief lies four times as deep.
    const depthPx = ([, y]: readonly [number, number]) => y - layout.topPx
    expect(depthPx(layout.measured[0] as [number, number])).toBeCloseTo(
      4 * depthPx(layout.wanted[0] as [number, number]),
      6,
    )
  })
})

describe('the straightedge', () => {
  const gapsOf = (touch: number) => straightedgeLayout(touch, 0, 100).gaps.map((gap) => gap.edge[1] - gap.rule[1])

  test('on the crown leaves equal gaps', () => {
    const [left, right, halfLeft, halfRight] = gapsOf(0) as [number, number, number, number]
    expect(left).toBeCloseTo(right, 9)
    expect(halfLeft).toBeCloseTo(halfRight, 9)
  })

  test('askew touches where the gaps say: s (x - t)^2, nowhere below the edge', () => {
    for (const touch of [-1, -0.4, 0.7]) {
      const [left, right] = gapsOf(touch) as [number, number]
      expect(left / right).toBeCloseTo((0.96 + touch) ** 2 / (0.96 - touch) ** 2, 9)
      expect(Math.min(...gapsOf(touch))).toBeGreaterThanOrEqual(0)
    }
  })

  test('touches nearer the corner with the thinner leaf', () => {
    // (1 + t)^2 = 0.64 and (1 - t)^2 = 1.44 for t = -0.2.
    expect(touchOf(leaves(0.32, null, 0.72))).toBeCloseTo(-0.2, 12)
    expect(touchOf(leaves(0, null, 2))).toBe(-1)
    expect(touchOf(leaves(0, null, 0))).toBe(0)
  })
})

describe('words', () => {
  test('what is neither arc nor roof is flat in the middle or hollow on its flanks', () => {
    expect([0.04, 0.12, 0.235, 0.4].map((halfway) => shapeWordOf(edge(0.5, halfway, 0.5)))).toEqual([
      'flat',
      'arc',
      'roof',
      'hollow',
    ])
    expect(shapeWordOf(edge(0.5, null, 0.5))).toBe('unknown')
  })

  test('a radius has as many digits as the leaves deserve', () => {
    expect([deservedText('20306', 0.3), deservedText('812', 0.02), deservedText('31.99', 0.06)]).toEqual([
      '20000',
      '812',
      '32',
    ])
  })
})

describe('the job', () => {
  const parsed = parseJob({
    version: 1,
    blade: { widthMm: WIDTH_MM, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up' },
    station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
    fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8 },
    aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5 },
    motion: { stopTurnsLeft: 2, stopTurnsRight: 2 },
    grid: { across: 29, through: 5 },
  })
  const solved = parsed.ok ? solveJob(parsed.value) : parsed
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems))
  const report = solved.value
  const tool = { widthMm: WIDTH_MM, reliefMm: 0.5 } as Tool

  test('shows at the grind the newest edge as ground, or else as honed; never as found, and none where the log has none', () => {
    const honed = line({ code: 'L2', stage: 'asHoned' })
    const ground = line({ code: 'L3', stage: 'asGround', reliefLeftMm: 0.4, reliefRightMm: 0.4, reliefHalfwayMm: 0.1 })
    expect(measuredOf(report, [line()])).toBeNull()
    expect(measuredOf(report, [honed, line()])?.line.code).toBe('L2')
    const shown = measuredOf(report, [honed, ground, line()])
    expect([shown?.line.code, shown?.reliefMm]).toEqual(['L3', 0.4])
    expect(shown?.curve.marks[0]).toEqual({ uMm: -WIDTH_MM / 2, leastMm: 0.4, mostMm: 0.4 + STEP_MM })
    expect(deepestMeasuredMm(shown ?? null)).toBeCloseTo(0.42, 12)
  })

  const { inWords } = figuresIn('mm')
  const telling = {
    t: createTexts().t,
    length: (mm: number) => inWords(mm, 'mm', 2),
    ...heldAgainst(tool, report),
  }
  const said = (...taken: Parameters<typeof leaves>) =>
    sentenceOf(showing(takenBy(leaves(...taken)), [], IRON), 'leaves', 'asGround', telling).replaceAll('\u00a0', ' ')

  test('the card’s leaves are those of the edge predicted, to a hundredth', () => {
    const { leftMm, halfwayMm, rightMm } = leavesOfCard(report)
    expect(leftMm).toBeCloseTo((report.grind.reliefLeftMm + report.grind.reliefRightMm) / 2, 2)
    expect(rightMm).toBe(leftMm)
    const { edgeVMm } = report.grind
    const behind = (share: number) => (edgeVMm[share * (edgeVMm.length - 1)] as number) - Math.min(...edgeVMm)
    expect(halfwayMm).toBeCloseTo((behind(0.25) + behind(0.75)) / 2, 2)
    // A fixture that gives a tenth more than the model: so do its leaves.
    const modelMm = (report.grind.reliefLeftMm + report.grind.reliefRightMm) / 2
    const learnt = { ...report, learnt: { reliefMm: 1.1 * modelMm, standardErrorMm: 0.02 } }
    expect(leavesOfCard(learnt).leftMm).toBeCloseTo(1.1 * modelMm, 2)
    expect(heldAgainst(tool, learnt).predictedMm).toBeCloseTo(1.1 * modelMm, 9)
    const freshened = { ...report, job: { ...report.job, aim: { ...report.job.aim, task: 'freshen' as const } } }
    // Freshening keeps the arc wanted: halfway a quarter of 0.5, written 0.13.
    expect(leavesOfCard(freshened)).toEqual(leaves(0.5, 0.13, 0.5))
  })

  test('a ground edge is held against what is wanted and what was predicted', () => {
    expect(said(0.5, 0.12, 0.5)).toMatch(
      /^Both corners lie 0.50 mm behind the middle. That is as wanted, .* It is at least 0.\d\d mm more than predicted.$/,
    )
  })

  test('unequal leaves are not said to be as wanted only because they leave it open', () => {
    expect(said(0.3, null, 0.7)).toMatch(
      /^The straightedge lay askew: the corners lie from 0.48 mm to 0.50 mm behind the middle. It is at least 0.\d\d mm more than predicted.$/,
    )
  })

  test('what is begun asks for the other corner; what contradicts leads to its field; nothing typed shows the log', () => {
    const showingOf = (typed: Leaves, readings: readonly BenchLog[] = []) => showing(takenBy(typed), readings, IRON)
    const words = (typed: Leaves, readings?: readonly BenchLog[]) =>
      sentenceOf(showingOf(typed, readings), 'leaves', 'asFound', telling)
    expect(words({ ...noLeaves, leftMm: 0.5 }, [line()])).toBe('Now the leaf at the other corner.')
    expect(words(leaves(0.1, 0.5, 0.1))).toContain('see what is marked')
    const once: Taken = {
      method: 'points',
      leaves: noLeaves,
      points: Array(3).fill({ uMm: 5, gapMm: 0.1 }),
      stepMm: 0.02,
    }
    expect(sentenceOf(showing(once, [], IRON), 'points', 'asFound', telling)).toContain(
      'fewer than three different places',
    )
    expect(words(noLeaves)).toContain('Wheel stopped.')
    expect(words(noLeaves, [line()])).toMatch(/^Last measured as found, 25 Nov.* Both corners lie 0.50/)
    expect(showingOf(noLeaves, [line()]).shown?.line?.code).toBe('L1')
  })
})

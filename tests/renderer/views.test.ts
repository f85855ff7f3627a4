import { describe, expect, it } from 'vitest'
import { acrossMm, edgeOf } from '../../geometry/edge.ts'
import { hollowOf } from '../../geometry/hollow.ts'
import type { Job } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { bevelAngles } from '../../geometry/protractor.ts'
import type { Report } from '../../geometry/report.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { degFromRad, radFromDeg } from '../../geometry/units.ts'
import { woodViewOf } from '../../geometry/woodView.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { bandWord } from '../../renderer/grind/views/BevelBand.tsx'
import { fillWheelLine, freeWayMm } from '../../renderer/grind/views/backPlan.ts'
import { fillSignedLoss, newSignedLoss, paintInk, tornRows } from '../../renderer/grind/views/inkMap.ts'
import { bladeAt, liveTriangle } from '../../renderer/grind/views/liveTriangle.ts'
import { markedPlace, nearestColumn, placeFigures } from '../../renderer/grind/views/place.ts'
import { sectionPlan } from '../../renderer/grind/views/sectionLayout.ts'
import { sectionPen } from '../../renderer/grind/views/sectionPen.ts'
import { inPlaneMm, onBladeMm, seenNow, thicknessAt, woodSurface } from '../../renderer/grind/views/woodNow.ts'
import { machineFigures, placeBase, placeBladeOnBase, setUpTiltRad, under } from '../../renderer/scene/placement.ts'
import { type Triangle, triangleOf } from '../../renderer/setUp/triangle.ts'
import { sectionLayout } from '../../renderer/wood/sectionLayout.ts'
import { asItLies } from '../../renderer/wood/setting.ts'
import { toolDraft } from '../main/support.ts'

const job = ((): Job => {
  const parsed = parseJob({
    version: 1,
    blade: { widthMm: 60, thicknessMm: 3, seatAngleDeg: 30, bevelSide: 'down' },
    station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
    fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8, pivotOffsetMm: 2 },
    aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.4, shavingDepthMm: 0.1 },
    motion: { sweeps: 4 },
    grid: { across: 21, through: 5 },
  })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  return parsed.value
})()
const setUp = (() => {
  const found = setUpOf(job)
  if (!found.ok) throw new Error('no set-up')
  return found.value
})()
const { wheelRadiusMm: R, bevelRad } = setUp
const figures = machineFigures(job, setUp)
const atRest = { tiltRad: setUpTiltRad(setUp), yawRad: 0, traverseMm: 0 }

const ROWS = 17
const nMm = Float64Array.from({ length: ROWS }, (_, j) => (3 * j) / (ROWS - 1))
/** The wheel's own arc in the blade's frame, edge at v = 0. */
const formed = Float64Array.from(
  nMm,
  (n) => Math.sqrt(R ** 2 - (n - R * Math.cos(bevelRad)) ** 2) - R * Math.sin(bevelRad),
)

const formedOn = ({ onBlade }: Triangle) => Array.from(nMm, (n, j) => onBlade(formed[j] as number, n))

describe('the section along the wheel', () => {
  it('a bevel that the wheel has formed lies on the wheel, edge to heel, wherever across it is cut', () => {
    for (const uMm of [-30, 0, 12]) {
      const triangle = liveTriangle(setUp, figures, { ...atRest, traverseMm: 4 }, uMm, 0)
      for (const [x, y] of formedOn(triangle)) expect(Math.hypot(x, y)).toBeCloseTo(R, 9)
    }
  })

  it('pressed in by a tilt of 0.1 degree about the bar, the edge goes into the wheel', () => {
    const pressed = liveTriangle(setUp, figures, { ...atRest, tiltRad: atRest.tiltRad - radFromDeg(0.1) }, 0, 0)
    expect(Math.hypot(...pressed.edge)).toBeLessThan(R - 0.1)
  })

  it('is the triangle of Set up: bar above the axle, edge 130 mm from it along the back', () => {
    const live = liveTriangle(setUp, figures, atRest, 0, 0)
    const still = triangleOf(setUp, 0)
    for (const [point, other] of [
      [live.bar, still.bar],
      [live.edge, still.edge],
      [live.onBlade(130, 15), still.onBlade(130, 15)],
    ] as const) {
      expect(point[0]).toBeCloseTo(other[0], 9)
      expect(point[1]).toBeCloseTo(other[1], 9)
    }
    expect(Math.hypot(live.bar[0] - live.onBlade(130, 15)[0], live.bar[1] - live.onBlade(130, 15)[1])).toBeCloseTo(0, 9)
  })

  it('is drawn with every frame where the triangle of that frame has it', () => {
    const [live, blade] = [liveTriangle(setUp, figures, { ...atRest, yawRad: 0.01 }, 12, 0), bladeAt(figures)]
    const plan = sectionPlan(live, setUp, 7, live.edge, { widthPx: 480, heightPx: 266 })
    blade.set({ ...atRest, yawRad: 0.3, traverseMm: 9 }, -20)
    blade.set({ ...atRest, yawRad: 0.01 }, 12)
    const pen = sectionPen(blade, plan.near)
    const drawn: number[] = []
    const row = { add: (x: number, y: number) => drawn.push(x, y) }
    pen.onBlade(row, 4, 2)
    pen.add(row, 3, 125)
    pen.fromEdge(row, 0.2, pen.backRad(), 50)
    const [edgeX, edgeY] = plan.near.px(live.onBlade(0.2, 0))
    const [downX, downY] = plan.near.px(live.onBlade(-5, 0))
    const share = 50 / Math.hypot(downX - edgeX, downY - edgeY)
    const expected = [
      ...plan.near.px(live.onBlade(4, 2)),
      ...plan.near.px([3, 125]),
      edgeX + (downX - edgeX) * share,
      edgeY + (downY - edgeY) * share,
    ]
    drawn.forEach((px, k) => {
      expect(px).toBeCloseTo(expected[k] as number, 6)
    })
  })

  it('finds 25 degrees at the tip of a hollow bevel and the flatter chord of a flat stone', () => {
    const { tipRad, chordRad } = bevelAngles({ atMm: nMm, backMm: formed })
    expect(degFromRad(tipRad)).toBeCloseTo(25, 2)
    expect(degFromRad(chordRad)).toBeCloseTo(hollowOf(R, bevelRad, 3).chordAngleDeg, 9)
    expect(chordRad).toBeGreaterThan(tipRad)
  })

  it('shows edge and bevel whole in its box', () => {
    const triangle = liveTriangle(setUp, figures, atRest, 0, 0)
    const { chordMm } = hollowOf(R, bevelRad, 3)
    const middle = triangle.onBlade(chordMm / 2, 1.5)
    const plan = sectionPlan(triangle, setUp, chordMm, middle, { widthPx: 480, heightPx: 266 })
    for (const point of formedOn(triangle)) {
      const [x, y] = plan.near.px(point)
      expect(x).toBeGreaterThan(plan.nearBox.leftPx)
      expect(x).toBeLessThan(plan.nearBox.leftPx + plan.nearBox.widthPx)
      expect(y).toBeGreaterThan(plan.nearBox.topPx)
      expect(y).toBeLessThan(plan.nearBox.topPx + plan.nearBox.heightPx)
    }
    const [ax, ay] = plan.near.px(triangle.edge)
    const [bx, by] = plan.near.px(triangle.onBlade(10, 0))
    expect(Math.hypot(bx - ax, by - ay)).toBeCloseTo((10 * plan.nearFactor * 96) / 25.4, 9)
  })
})

describe('the plan of the back', () => {
  const uMm = acrossMm(60, 21)
  const turned = { yawRad: radFromDeg(0.3), traverseMm: 5 }
  const edgeVMm = (i: number) => 0.0004 * ((uMm[i] as number) - 4) ** 2
  const line = new Float64Array(4)
  const field = Float64Array.from({ length: 42 }, (_, at) => edgeVMm(at >> 1) + (at & 1))
  fillWheelLine(line, { uMm, throughCount: 2 }, field, 50, figures, turned)
  const [leftU, leftV, rightU, rightV] = line as unknown as [number, number, number, number]
  const ends = [
    [leftU, leftV],
    [rightU, rightV],
  ] as const

  it("ends the wheel's line at the wheel's sides, as the scene has them", () => {
    const base = new Float64Array(16)
    const blade = new Float64Array(16)
    placeBase(figures, { ...atRest, ...turned }, base)
    placeBladeOnBase(figures, turned.yawRad, blade)
    ends.forEach(([u, v], k) => {
      expect(under(base, ...under(blade, u, v, 0))[0]).toBeCloseTo(k === 0 ? -25 : 25, 9)
    })
  })

  it('draws the yaw at its true angle, higher where the corner is ground back, and touches the edge without cutting it', () => {
    expect(degFromRad(Math.atan2(rightV - leftV, rightU - leftU))).toBeCloseTo(0.3, 9)
    const gaps = Array.from(uMm, (u, i) => edgeVMm(i) - (leftV + (u - leftU) * Math.tan(turned.yawRad)))
    expect(Math.min(...gaps)).toBeCloseTo(0, 12)
  })

  it('a stop with 0.8 mm free play at 75 mm bears at a yaw of 0.8 / 75; the other then has 1.6 mm', () => {
    expect(freeWayMm(0.8, 1, 75, Math.atan(0.8 / 75))).toBeCloseTo(0, 12)
    expect(freeWayMm(0.8, -1, 75, Math.atan(0.8 / 75))).toBeCloseTo(1.6, 12)
  })
})

describe('the ink map', () => {
  const shape = { acrossCount: 9, throughCount: 7, vStartMm: new Float64Array(63) }
  /** A wedge taken off from the edge, ending at a border that runs from row 2.2 up by 0.25 a column. */
  const border = (i: number) => 2.2 + 0.25 * i
  const field = Float64Array.from({ length: 63 }, (_, at) => {
    const [i, j] = [Math.floor(at / 7), at % 7]
    return Math.max(0, 0.1 * (border(i) - j))
  })
  const signed = newSignedLoss(shape)
  fillSignedLoss(signed, field, shape)

  /** Eight pixels from node to node; 1 where ink is left. */
  const FINER = 8
  const painted = (): readonly (readonly number[])[] => {
    const [width, height] = [8 * FINER + 1, 6 * FINER + 1]
    const pixels = new Uint32Array(width * height)
    const flat = { finer: FINER, ink: 1, ground: new Uint32Array(width), tornRows: new Float64Array(width) }
    paintInk(pixels, signed, flat)
    return Array.from({ length: height }, (_, y) => [...pixels.subarray(y * width, (y + 1) * width)])
  }

  it('ends the cut where the loss runs out, between the nodes, along the whole slanting border', () => {
    const rows = painted()
    for (let x = 0; x <= 64; x += 4) {
      const y = border(x / FINER) * FINER
      expect(rows[Math.floor(y - 1)]?.[x], `over the border at ${x}`).toBe(0)
      expect(rows[Math.min(Math.ceil(y + 1), 48)]?.[x], `under the border at ${x}`).toBe(1)
    }
  })

  it('leaves an untouched bevel all ink, a ground one none', () => {
    fillSignedLoss(signed, new Float64Array(63), shape)
    expect(
      painted()
        .flat()
        .every((pixel) => pixel === 1),
    ).toBe(true)
    fillSignedLoss(signed, new Float64Array(63).fill(0.01), shape)
    expect(
      painted()
        .flat()
        .every((pixel) => pixel === 0),
    ).toBe(true)
  })

  it('tears the border by less than half a row', () => {
    const torn = Array.from({ length: 200 }, (_, x) => tornRows(x))
    expect(Math.max(...torn.map(Math.abs))).toBeLessThan(0.5)
    expect(new Set(torn).size).toBeGreaterThan(150)
  })

  it.each([
    [null, 'none'],
    [{ fromEdgeMm: 0, fromHeelMm: 2 }, 'toEdge'],
    [{ fromEdgeMm: 1, fromHeelMm: 0 }, 'toHeel'],
    [{ fromEdgeMm: 0, fromHeelMm: 0 }, 'whole'],
    [{ fromEdgeMm: 1, fromHeelMm: 2 }, 'at'],
  ] as const)('a band %j is written as %s', (band, word) => expect(bandWord(band)).toBe(word))
})

describe('a place across', () => {
  const shape = { uMm: Float64Array.from([-10, 0, 10]), throughCount: 3, acrossCount: 3, vStartMm: new Float64Array(9) }
  const frame = {
    vMm: Float64Array.from([0.4, 0, 0, 0.1, 0.1, 0, 0.3, 0, 0]),
    pressureNPerMm: Float64Array.from([0, 2, 1]),
  }

  it('has relief and pressure straight between the columns, and the ink of the nearest', () => {
    const there = placeFigures(frame, shape, 4)
    expect(there.uMm).toBeCloseTo(4, 12)
    expect(there.reliefMm).toBeCloseTo(0.08, 12)
    expect(there.pressureNPerMm).toBeCloseTo(1.6, 12)
    // The middle column has lost its edge node, which counts half, and its middle one: 0.5 of 2 is left.
    expect(there.inkLeftShare).toBe(0.25)
    expect(placeFigures(frame, shape, 99).uMm).toBe(10)
  })

  it('is marked in half millimetres, and never off the blade', () => {
    expect(markedPlace(12.3, 60)).toBe(12.5)
    expect(markedPlace(-30, 60)).toBe(-30)
    expect(markedPlace(30.2, 60)).toBeNull()
    expect(nearestColumn(shape.uMm, -6)).toBe(0)
  })
})

describe('the wood view of a moment', () => {
  const report = ((): Report => {
    const solved = solveJob(job)
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems))
    return solved.value
  })()
  const tool = (bevelSide: Tool['bevelSide']): Tool => ({
    ...toolDraft,
    id: '00000000-0000-4000-8000-000000000001',
    code: 'T1',
    version: 1,
    seatAngleDeg: 30,
    bevelSide,
  })
  const uMm = acrossMm(60, 21)
  const vMm = Float64Array.from({ length: 42 }, (_, at) => 0.0004 * ((uMm[at >> 1] as number) - 3) ** 2)

  it('takes the shaving that the wood view of the geometry has for that edge', () => {
    const down = { tool: tool('down'), report, setting: asItLies }
    const seen = seenNow({ vMm }, { uMm, throughCount: 2 }, down)
    const told = woodViewOf(job, edgeOf(uMm, vMm, 2), bevelRad)
    expect(seen?.cut.widthMm).toBeCloseTo(told?.shavingWidthMm ?? 0, 12)
    expect(seen?.cut.areaMm2).toBeCloseTo(told?.shavingAreaMm2 ?? 0, 12)
    expect(seen?.camberMm).toBeCloseTo(told?.woodReliefMm ?? 0, 12)
    if (!seen) throw new Error('has a seat')
    expect(thicknessAt(seen, inPlaneMm(down, 3))).toBeCloseTo(0.1, 12)
  })

  it.each([
    ['down', 0, 0, null],
    ['up', 0.05, 20, 12],
  ] as const)(
    'is drawn with every frame as the wood view lays it out: bevel %s, lever %d, skew %d, step %s',
    (...row) => {
      const [side, leverDeg, skewDeg, stepMm] = row
      const inPlane = { tool: tool(side), report, setting: { ...asItLies, leverDeg, skewDeg, stepMm } }
      const seen = seenNow({ vMm }, { uMm, throughCount: 2 }, inPlane)
      if (!seen) throw new Error('has a seat')
      const layout = sectionLayout(seen, stepMm, 80, 400, 60)
      const surface = woodSurface({ uMm, throughCount: 2, acrossCount: 21 }, inPlane, seen, layout, 400)
      surface.fill(new Float64Array(42).fill(1))
      surface.fill(vMm)
      const each = (layout.depth * 96) / 25.4
      const same = (found: Float64Array, drawn: readonly (readonly [number, number])[]) => {
        expect(found).toHaveLength(drawn.length)
        found.forEach((below, k) => {
          expect(layout.surfacePx + below * each).toBeCloseTo(drawn[k]?.[1] ?? Number.NaN, 9)
        })
      }
      same(surface.beforeMm, layout.before)
      same(surface.afterMm, layout.after)
      same(
        surface.behindMm.map((behind) => seen.depthMm - behind * seen.seatSine),
        layout.edge,
      )
      expect([...surface.uMm]).toEqual(seen.profile.uMm.map((u) => expect.closeTo(u, 12)))
    },
  )

  it('finds a place of a bevel-up iron on the other side of its plane, and back', () => {
    const up = { tool: tool('up'), report, setting: { ...asItLies, skewDeg: 20 } }
    expect(inPlaneMm(up, 10)).toBeCloseTo(-10 * Math.cos(radFromDeg(20)), 12)
    expect(onBladeMm(up, inPlaneMm(up, 7))).toBeCloseTo(7, 12)
    const seen = seenNow({ vMm }, { uMm, throughCount: 2 }, { ...up, setting: asItLies })
    if (!seen) throw new Error('has a seat')
    expect(thicknessAt(seen, -3)).toBeCloseTo(0.1, 12)
    expect(thicknessAt(seen, 16)).toBeLessThan(thicknessAt(seen, -16))
  })
})

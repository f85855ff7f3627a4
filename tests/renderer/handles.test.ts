import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { Job } from '../../geometry/job.ts'
import { jobSchema } from '../../geometry/job.ts'
import { quantities } from '../../geometry/quantities.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { degFromRad } from '../../geometry/units.ts'
import { alongMm, axisOf } from '../../renderer/grind/handles/axis.ts'
import { draggedPlaceMm, handRange, shareOf, stepsBetween } from '../../renderer/grind/handles/hand.ts'
import { withBar, withOffset, withProjection } from '../../renderer/grind/handles/held.ts'
import { createKeyRun, REST_MS } from '../../renderer/grind/handles/keyRun.ts'
import type { HandleFacts } from '../../renderer/grind/handles/kind.ts'
import { kindsOf } from '../../renderer/grind/handles/kinds.ts'
import { atLimit, furthest, keyed, snapped } from '../../renderer/grind/handles/range.ts'
import { draggedTurns, isNotch } from '../../renderer/grind/handles/stopHandle.ts'
import type { AnchorName } from '../../renderer/scene/anchors.ts'
import type { Project } from '../../renderer/scene/SceneView.tsx'
import { figuresIn } from '../../renderer/ui/useFigure.ts'

const jobOf = (
  aim: object = { bevelAngleDeg: 25, projectionMm: 130 },
  station: object = {},
  fixture: object = {},
): Job =>
  jobSchema.parse({
    version: 1,
    blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up', currentBevelDeg: 25 },
    station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12, ...station },
    fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8, ...fixture },
    aim: { reliefMm: 0.5, ...aim },
    motion: { stopTurnsLeft: 2, stopTurnsRight: 1.5 },
  })

const setUpFor = (job: Job) => {
  const setUp = setUpOf(job)
  if (!setUp.ok) throw new Error(setUp.problems[0]?.code)
  return setUp.value
}

const factsOf = (job: Job): HandleFacts => ({
  // Says the key and its figures, so that what is told can be read here.
  t: ((key: string, params: object = {}) => [key, ...Object.values(params)].join(' ')) as HandleFacts['t'],
  figures: figuresIn('mm'),
  job,
  setUp: setUpFor(job),
  station: null,
})

const kind = (job: Job, id: string) => {
  const found = kindsOf(factsOf(job), false).find((each) => each.id === id)
  if (!found) throw new Error(`no handle ${id}`)
  return found
}

/** A picture with two pixels to the millimetre: across to the right, the bar's rise up, towards the operator down to the left, the blade down. */
const at: Partial<Record<AnchorName, readonly [number, number]>> = {
  edgeLeft: [100, 500],
  edgeRight: [214, 500],
  barLeft: [80, 200],
  barRise: [80, 140],
  barRight: [300, 200],
  barForward: [264, 248],
  projectionTop: [100, 240],
  projectionEdge: [100, 500],
}
const picture: Project = (name) => (typeof name === 'number' ? undefined : at[name]) ?? [0, 0]

const range = { min: -2, max: 3, snap: 0.5 }

test('keys: arrows one snap, Shift and Page ten, Home and End the limits, and from between two snaps to the next', () => {
  expect(keyed('ArrowUp', false, 0, range)).toBe(0.5)
  expect(keyed('ArrowRight', false, 0.2, range)).toBe(0.5)
  expect(keyed('ArrowLeft', false, 0.2, range)).toBe(0)
  expect(keyed('ArrowDown', false, -2, range)).toBe(-2)
  const wide = { min: 0, max: 100, snap: 0.1 }
  expect(keyed('ArrowUp', true, 76.57, wide)).toBe(77.5)
  expect(keyed('ArrowDown', true, 76.57, wide)).toBe(75.6)
  expect(keyed('PageUp', false, 10, wide)).toBe(11)
  expect(keyed('PageDown', true, 10, wide)).toBe(9)
  expect([keyed('Home', false, 1, range), keyed('End', false, 1, range)]).toEqual([-2, 3])
  expect(keyed('a', false, 1, range)).toBeNull()
})

test('values snap, stop at their limits and say so', () => {
  expect(snapped(0.74, range)).toBe(0.5)
  expect(snapped(9, range)).toBe(3)
  expect([atLimit(3, range), atLimit(-2, range), atLimit(2.5, range)]).toEqual([true, true, false])
  expect(furthest((value) => value < 7.3, 2.31, 40, 0.5)).toBe(7)
  expect(furthest((value) => value > -7.3, 2.31, -40, 0.5)).toBe(-7)
  expect(furthest(() => true, 2.31, 40, 0.5)).toBe(40)
})

test('a pointer goes along a line and not across it, and a line seen end on does not run away', () => {
  const axis = axisOf(picture, 'edgeLeft', 'edgeRight', 57)
  expect(alongMm(axis, 10, 40)).toBe(5)
  const steep = axisOf(() => [0, 0], 'edgeLeft', 'edgeRight', 57)
  expect(Math.abs(alongMm(steep, 10, 40))).toBe(0)
})

test('a screw turns in twentieths, all of which can be met, holds at halves, and stops at its ends', () => {
  const turns = { min: 0, max: 12, snap: 0.05 }
  expect(draggedTurns(2, 80, turns)).toBe(3)
  expect(draggedTurns(2, -80, turns)).toBe(1)
  expect([draggedTurns(2, 3, turns), draggedTurns(2, 4, turns), draggedTurns(2, -4, turns)]).toEqual([2, 2, 2])
  expect(draggedTurns(2, 8, turns)).toBe(2.05)
  expect(draggedTurns(2, -9000, turns)).toBe(0)
  expect(draggedTurns(2, 9000, turns)).toBe(12)
  const met = new Set(Array.from({ length: 81 }, (_, px) => draggedTurns(2, px, turns)))
  expect([...met]).toEqual(Array.from({ length: 21 }, (_, k) => Number((2 + k * 0.05).toFixed(2))))
  expect([isNotch(1.5), isNotch(2), isNotch(1.55)]).toEqual([true, true, false])
})

test('both screws give way outwards, and their turns win over a yaw that was given', () => {
  const job = jobOf()
  expect(kind(job, 'stopLeft').grip(picture, 0)(-80, 0)).toBe(3)
  expect(kind(job, 'stopRight').grip(picture, 0)(80, 30)).toBe(2.5)
  const yawed = { ...job, motion: { ...job.motion, yawLeftDeg: 1 } }
  expect(kind(yawed, 'stopLeft').change(yawed, 3).motion).toMatchObject({ stopTurnsLeft: 3, yawLeftDeg: null })
  expect(kind(job, 'stopLeft').tell(3, kind(job, 'stopLeft').change(job, 3))).toEqual({
    value: '3\u00a0turns',
    follows: 'handles:follows.play 2.40\u00a0mm',
  })
})

test.each([
  ['bar found', { bevelAngleDeg: 25, projectionMm: 130 }],
  ['projection found', { bevelAngleDeg: 25, barDistanceMm: 207.57 }],
  ['bevel found', { projectionMm: 130, barDistanceMm: 207.57 }],
])('with the %s, bar and projection moved by hand are given and the bevel follows', (_name, aim) => {
  const job = jobOf(aim)
  const before = setUpFor(job)
  const lifted = withBar(job, 'gap', before.barDistanceMm - 131 + 2)
  expect(lifted.aim.bevelAngleDeg).toBeNull()
  expect(lifted.aim.barDistanceMm).toBeCloseTo(before.barDistanceMm + 2, 9)
  expect(lifted.aim.projectionMm).toBeCloseTo(before.projectionMm, 2)
  expect(setUpFor(lifted).bevelRad).toBeGreaterThan(before.bevelRad)
  const slid = withProjection(job, 133)
  expect(slid.aim).toMatchObject({ bevelAngleDeg: null, projectionMm: 133 })
  expect(slid.aim.barDistanceMm).toBeCloseTo(before.barDistanceMm, 2)
  expect(setUpFor(slid).bevelRad).toBeLessThan(before.bevelRad)
  expect(jobSchema.parse(slid)).toEqual(slid)
})

test('the bar goes up with the pointer in tenths, tells the bevel, and ends where no bevel can be ground', () => {
  const job = jobOf()
  const bar = kind(job, 'bar')
  expect(bar.value).toBeCloseTo(76.573, 3)
  expect(bar.grip(picture, 0)(50, -7)).toBe(80.1)
  expect(bar.tell(80.1, bar.change(job, 80.1))).toEqual({
    value: '80.1\u00a0mm',
    follows: `handles:follows.bevel ${degFromRad(setUpFor(withBar(job, 'gap', 80.1)).bevelRad).toFixed(1)}°`,
  })
  const { min, max } = quantities.aim.bevelAngleDeg
  const bevel = (mm: number) => degFromRad(setUpFor(bar.change(job, mm)).bevelRad)
  expect(bevel(bar.range.min)).toBeGreaterThanOrEqual(min)
  expect(bevel(bar.range.max)).toBeLessThanOrEqual(max)
  expect(setUpOf(bar.change(job, bar.range.max + 0.1)).ok).toBe(false)
  expect(setUpOf(bar.change(job, bar.range.min - 0.1)).ok).toBe(false)
  expect(bar.grip(picture, 0)(0, -9000)).toBe(bar.range.max)
})

test('the projection goes along the blade in halves and ends where the geometry does', () => {
  const job = jobOf()
  const projection = kind(job, 'projection')
  expect(projection.grip(picture, 0)(30, 7)).toBe(133.5)
  expect(projection.grip(picture, 0)(0, -9000)).toBe(projection.range.min)
  expect(setUpOf(projection.change(job, projection.range.max + 0.5)).ok).toBe(false)
  expect(setUpOf(projection.change(job, projection.range.min - 0.5)).ok).toBe(false)
})

test('a bar that stands to one side can be shifted, its distance and the bevel kept; one straight above has no such handle', () => {
  const ids = (job: Job) => kindsOf(factsOf(job), false).map(({ id }) => id)
  expect(ids(jobOf())).not.toContain('barOffset')
  const job = jobOf(undefined, { barOffsetMm: 40 })
  const offset = kind(job, 'barOffset')
  // Towards the operator is (-36, 48) in this picture for 30 mm, 2 px to the mm.
  expect(offset.grip(picture, 0)(-6, 8)).toBe(45)
  const shifted = withOffset(job, 45)
  expect(setUpFor(shifted).bevelRad).toBe(setUpFor(job).bevelRad)
  expect(offset.range.min).toBe(0)
  expect(offset.range.max).toBe(Math.floor(setUpFor(job).barDistanceMm))
})

test('the reach grows outwards on the side where the load stands', () => {
  const reach = kind(jobOf(), 'reach')
  expect(reach.grip(picture, 12)(7, 0)).toBe(29.5)
  expect(reach.grip(picture, -12)(7, 0)).toBe(22.5)
  expect(reach.grip(picture, 12)(-900, 0)).toBe(0)
  expect(reach.grip(picture, 12)(900, 0)).toBe(quantities.motion.fingerReachMm.max)
})

test('lifted, nothing presses: the reach cannot be taken hold of; an unsteered fixture has no screws', () => {
  const ids = (job: Job, lifted: boolean) => kindsOf(factsOf(job), lifted).map(({ id }) => id)
  expect(ids(jobOf(), true)).toEqual(['stopLeft', 'stopRight', 'bar', 'projection'])
  const square = jobOf(undefined, {}, { kind: 'square', guideArmMm: null, screwPitchMm: null })
  expect(ids(square, false)).toEqual(['reach', 'bar', 'projection'])
})

test('the hand moves the load over the reach, the blade staying under it, and no further', () => {
  const job = jobOf()
  // Reach 26, traverse 10: the point held goes 16 mm while the load goes 26.
  expect(draggedPlaceMm(job, 0, 8)).toBe(13)
  expect(draggedPlaceMm(job, -13, -100)).toBe(-26)
  expect(handRange(job)).toMatchObject({ min: -26, max: 26 })
  expect(shareOf(job, -13)).toBe(-0.5)
  const still = { ...job, motion: { ...job.motion, fingerReachMm: 0 } }
  expect([draggedPlaceMm(still, 0, 9), shareOf(still, 9)]).toEqual([0, 0])
  const wild = { ...job, motion: { ...job.motion, traverseMm: 90 } }
  expect(draggedPlaceMm(wild, 0, 5)).toBe(10)
})

test('by keys a whole way takes a planned sweep of steps, ending where it goes', () => {
  const job = jobOf()
  const way = stepsBetween(job, -26, 26)
  expect(way).toHaveLength(job.motion.stepsPerSweep)
  expect(way.at(-1)).toBe(26)
  expect(way[0]).toBeCloseTo(-26 + 52 / 24, 9)
  expect(stepsBetween(job, 3, 4)).toEqual([4])
  expect(stepsBetween(job, 3, 3)).toEqual([3])
})

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

test('a run of keys is one change, kept after a rest or when the focus leaves; given up it is none', () => {
  const drafts: (number | null)[] = []
  const kept: number[] = []
  const run = createKeyRun({ onDraft: (value) => drafts.push(value), onKeep: (value) => kept.push(value) })
  for (const value of [1, 2, 3]) {
    run.to(value)
    vi.advanceTimersByTime(REST_MS - 1)
  }
  expect([drafts, kept, run.value]).toEqual([[1, 2, 3], [], 3])
  vi.advanceTimersByTime(1)
  expect([kept, run.value]).toEqual([[3], null])
  run.to(4)
  run.keep()
  vi.advanceTimersByTime(2 * REST_MS)
  expect(kept).toEqual([3, 4])
  run.to(5)
  run.giveUp()
  vi.advanceTimersByTime(2 * REST_MS)
  run.keep()
  expect([kept, drafts.at(-1)]).toEqual([[3, 4], null])
})

import type { Job } from '../../geometry/job.ts'

/**
 * The contact grind once more, slowly: written from the model's formulas alone, node by node, with Math's own functions
 * and plain bisection, tilt within turn. It shares nothing with the engine but the type of a job.
 *
 * Steered, rocking and square fixtures; bevel angle and projection given; path sinusoid; one setting of the stops.
 */
export interface Oracle {
  readonly across: number
  readonly through: number
  /** v at which material begins, [column][row]. */
  readonly v: number[][]
  turn: number
  tilt: number
  step: number
}

const degrees = Math.PI / 180

/** What stays the same from step to step. */
const constantsOf = (job: Job) => {
  const { blade, station, fixture, aim, motion, grid } = job
  const R = station.wheelDiameterMm / 2
  const b = (aim.bevelAngleDeg as number) * degrees
  const P = aim.projectionMm as number
  const o = fixture.seatOffsetMm
  const C = Math.hypot(P + R * Math.sin(b), o - R * Math.cos(b))
  const turnOf = (turns: number, roll: number | null): number => {
    if (fixture.kind === 'square') return 0
    if (fixture.kind === 'rocking') return (roll ?? 0) * degrees
    return Math.atan((turns * (fixture.screwPitchMm as number)) / (fixture.guideArmMm as number))
  }
  const K = motion.removalPerSweepMm3 / (motion.loadN * motion.stepsPerSweep)
  return {
    ...{ R, b, P, o, C, K },
    W: station.wheelWidthMm,
    w: blade.widthMm,
    t: blade.thicknessMm,
    du: blade.widthMm / (grid.across - 1),
    dn: blade.thicknessMm / (grid.through - 1),
    kw: motion.bedStiffnessNPerMm3 / (1 + K * motion.bedStiffnessNPerMm3),
    left: turnOf(motion.stopTurnsLeft, motion.rollLeftDeg),
    right: turnOf(motion.stopTurnsRight, motion.rollRightDeg),
    pivotV: P + fixture.pivotSetbackMm,
  }
}

type Constants = ReturnType<typeof constantsOf>

/** The blade before the first step: a flat bevel from a straight edge. */
export const startOracle = (job: Job): Oracle => {
  const { R, b, o, C } = constantsOf(job)
  const { across, through } = job.grid
  const slope = Math.tan((job.blade.currentBevelDeg ?? (job.aim.bevelAngleDeg as number)) * degrees)
  const column = () => Array.from({ length: through }, (_, j) => (job.blade.thicknessMm * j) / (through - 1) / slope)
  const v = Array.from({ length: across }, column)
  return { across, through, v, turn: 0, tilt: Math.asin((R * Math.cos(b) - o) / C), step: 0 }
}

/** One node at a pose: penetration, and how much longer its patch is than du dn. */
const touch = (job: Job, c: Constants, turn: number, tilt: number, u: number, v: number, n: number) => {
  const vc = c.P - c.C * Math.cos(tilt)
  const nc = c.o + c.C * Math.sin(tilt)
  const up = job.fixture.pivotOffsetMm
  const { sin, cos } = Math
  if (job.fixture.kind === 'rocking') {
    const nr = job.fixture.rollHeightMm
    const level = nr + (u - up) * sin(turn) + (n - nr) * cos(turn)
    const d = v - vc
    const rho = Math.hypot(d, level - nc)
    return { x: up + (u - up) * cos(turn) - (n - nr) * sin(turn), depth: c.R - rho, stretch: rho / d }
  }
  const d = c.pivotV - vc + (v - c.pivotV) * cos(turn) - (u - up) * sin(turn)
  const rho = Math.hypot(d, n - nc)
  const x = up + (u - up) * cos(turn) + (v - c.pivotV) * sin(turn)
  return { x, depth: c.R - rho, stretch: rho / (d * cos(turn)) }
}

/** Force on one node (N); the wheel counts by the part of the node's column that it covers. */
const nodeForce = (job: Job, c: Constants, o: Oracle, i: number, j: number, turn: number, tilt: number, s: number) => {
  const u = -c.w / 2 + i * c.du
  const here = touch(job, c, turn, tilt, u, (o.v[i] as number[])[j] as number, j * c.dn)
  if (here.depth <= 0) return { force: 0, area: 0, u }
  const from = i === 0 ? 0 : c.du / 2
  const to = i === o.across - 1 ? 0 : c.du / 2
  const x = s + here.x
  const shrink = Math.cos(turn)
  const covered = Math.min(x + to * shrink, c.W / 2) - Math.max(x - from * shrink, -c.W / 2)
  const share = Math.max(0, covered) / ((from + to) * shrink)
  const height = j === 0 || j === o.through - 1 ? c.dn / 2 : c.dn
  const area = (from + to) * height
  return { force: c.kw * here.depth * here.stretch * area * share, area, u }
}

const sums = (job: Job, c: Constants, o: Oracle, turn: number, tilt: number, uf: number, s: number) => {
  let force = 0
  let moment = 0
  for (let i = 0; i < o.across; i++)
    for (let j = 0; j < o.through; j++) {
      const node = nodeForce(job, c, o, i, j, turn, tilt, s)
      force += node.force
      moment += node.force * (node.u - uf)
    }
  return { force, moment }
}

/** Halves a bracket until nothing lies between its ends. @param above true where the root lies below */
const bisect = (low: number, high: number, above: (x: number) => boolean): number => {
  for (;;) {
    const middle = (low + high) / 2
    if (middle <= low || middle >= high) return middle
    if (above(middle)) high = middle
    else low = middle
  }
}

/** Furthest that the blade may sink or lift from the last tilt in one step (rad): some millimetres at the edge. */
const TILT_REACH = 0.05
/** Parts in which the way to a stop is looked through for a change of the moment's sign. */
const LOOKS = 48

/** Grinds one step. @throws where the load finds no place */
const stepOracle = (job: Job, c: Constants, o: Oracle): void => {
  const side = job.motion.startSide === 'right' ? 1 : -1
  const f = side * Math.sin((Math.PI * o.step) / job.motion.stepsPerSweep)
  const uf = job.motion.fingerReachMm * f
  const s = -job.motion.traverseMm * f
  const N = job.motion.loadN
  // The blade sinks onto the wheel as the tilt about the bar falls.
  const tiltAt = (turn: number): number =>
    bisect(o.tilt - TILT_REACH, o.tilt + TILT_REACH, (tilt) => sums(job, c, o, turn, tilt, uf, s).force < N)
  const momentAt = (turn: number): number => sums(job, c, o, turn, tiltAt(turn), uf, s).moment
  const start = Math.min(Math.max(o.turn, -c.left), c.right)
  const pull = momentAt(start)
  const stop = pull < 0 ? c.right : -c.left
  let turn = stop
  let before = start
  for (let k = 1; k <= LOOKS && pull !== 0; k++) {
    const next = start + ((stop - start) * k) / LOOKS
    if (momentAt(next) * pull < 0) {
      turn = bisectTurn(before, next, momentAt)
      break
    }
    before = next
  }
  wearOracle(job, c, o, turn, tiltAt(turn), s)
  o.step++
}

/** Closeness of the turn (rad): a hundredth of a picometre at a corner. */
const TURN_GRAIN = 1e-13

const bisectTurn = (a: number, b: number, momentAt: (turn: number) => number): number => {
  let low = Math.min(a, b)
  let high = Math.max(a, b)
  while (high - low > TURN_GRAIN) {
    const middle = (low + high) / 2
    if (momentAt(middle) > 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}

const wearOracle = (job: Job, c: Constants, o: Oracle, turn: number, tilt: number, s: number): void => {
  for (let i = 0; i < o.across; i++)
    for (let j = 0; j < o.through; j++) {
      const { force, area } = nodeForce(job, c, o, i, j, turn, tilt, s)
      const column = o.v[i] as number[]
      if (force > 0) column[j] = (column[j] as number) + (c.K * force) / area
    }
  o.turn = turn
  o.tilt = tilt
}

/** Grinds on by some steps, in place. */
export const grindOracle = (job: Job, oracle: Oracle, steps: number): void => {
  const constants = constantsOf(job)
  for (let k = 0; k < steps; k++) stepOracle(job, constants, oracle)
}

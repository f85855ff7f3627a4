import { secondaryWidthMm } from '../honing.ts'
import { anglesInUse, jointOf } from '../plane.ts'
import { crownMm, profileReliefMm, turnedProfile } from '../profile.ts'
import { cornersIn, cutOf, ridgeMm } from '../shaving.ts'
import { gapUnder, restUnder, type SteelLine } from '../straightedge.ts'
import { hone } from '../strokes.ts'
import { radFromDeg } from '../units.ts'
import type { FigureName } from './figureNames.ts'
import type { Find, Scene } from './scene.ts'

/** A bevel-up iron is turned over on its way into the plane. */
const dotInPlane: Find = ({ state: { job, bench } }) => {
  const side = bench.dotCorner === 'left' ? -1 : 1
  return job.blade.bevelSide === 'up' ? -side : side
}

const inUse =
  (read: 'pitchDeg' | 'clearanceDeg'): Find =>
  ({ state: { job, bench } }) => {
    const { seatAngleDeg, bevelSide } = job.blade
    if (seatAngleDeg === null) return null
    return anglesInUse({ seatAngleDeg, bevelSide, honedDeg: bench.honedBevelDeg, backBevelDeg: 0 })[read]
  }

/** The wanted edge in its plane with the lever where it is. */
const levered = (scene: Scene) => {
  const profile = scene.inPlane()
  return profile && turnedProfile(profile, scene.state.bench.leverDeg)
}

const ofCut =
  (read: (cut: ReturnType<typeof cutOf>, scene: Scene) => number): Find =>
  (scene) => {
    const [profile, sine] = [levered(scene), scene.sine()]
    return profile && sine !== null ? read(cutOf(profile, scene.state.job.aim.shavingDepthMm, sine), scene) : null
  }

/** A board wider than any iron. */
const WIDE_BOARD_MM = 1000

const track: Find = (scene) => {
  const [profile, sine] = [levered(scene), scene.sine()]
  if (profile === null || sine === null) return null
  const { leftMm, rightMm } = cornersIn(profile, scene.state.job.aim.shavingDepthMm, sine, WIDE_BOARD_MM)
  return Math.max(leftMm, rightMm)
}

const ridge: Find = (scene) => {
  const [profile, sine] = [levered(scene), scene.sine()]
  return profile && sine !== null ? ridgeMm(profile, scene.state.bench.stepMm, sine) : null
}

const joint: Find = (scene) => {
  const [profile, sine] = [levered(scene), scene.sine()]
  const { stockMm, shiftMm } = scene.state.bench
  return profile && sine !== null ? (jointOf(profile, stockMm, shiftMm, sine)?.angleDeg ?? null) : null
}

/** Gaps under a straightedge at both corners of the wanted edge. @param press as `restUnder` takes it */
const gaps = (scene: Scene, press: number): readonly [number, number] | null => {
  const profile = scene.inPlane()
  if (profile === null) return null
  const line: SteelLine = { atMm: profile.uMm, backMm: profile.behindMm }
  const rest = restUnder(line, press)
  return [gapUnder(line, rest, line.atMm[0] as number), gapUnder(line, rest, profile.uMm.at(-1) as number)]
}

const gap =
  (press: number, read: (left: number, right: number) => number): Find =>
  (scene) => {
    const found = gaps(scene, press)
    return found && read(...found)
  }

const honed: Find = (scene) => {
  const profile = scene.inPlane()
  const { strokesCorner, strokesHalfway, strokesMiddle, setBackMm } = scene.state.bench
  const strokes = { corner: strokesCorner, halfway: strokesHalfway, middle: strokesMiddle }
  return profile && profileReliefMm(hone(profile, strokes, setBackMm).profile)
}

const secondary: Find = (scene) => {
  const setUp = scene.setUp()
  const { honedBevelDeg, setBackMm } = scene.state.bench
  if (setUp === null || radFromDeg(honedBevelDeg) <= setUp.bevelRad) return null
  const { wheelRadiusMm, bevelRad } = setUp
  return secondaryWidthMm({ wheelRadiusMm, bevelRad, honedRad: radFromDeg(honedBevelDeg) }, setBackMm)
}

const wanted: Find = (scene) => scene.plan()?.reliefMm ?? null

/** What wood, straightedge and stone make of the edge that is wanted. */
export const wantedFigures = {
  dotInPlane,
  wantedReliefMm: wanted,
  woodReliefMm: (scene) => scene.plan()?.woodReliefMm ?? null,
  pitchDeg: inUse('pitchDeg'),
  clearanceDeg: inUse('clearanceDeg'),
  shavingWidthMm: ofCut(({ widthMm }) => widthMm),
  shavingShareOfWidth: ofCut(({ widthMm }, { state }) => widthMm / state.job.blade.widthMm),
  shavingMm: ({ state }) => state.job.aim.shavingDepthMm,
  trackMm: track,
  ridgeMm: ridge,
  crownMm: (scene) => {
    const profile = levered(scene)
    return profile && crownMm(profile)
  },
  jointDeg: joint,
  gapEvenMm: gap(0, (left) => left),
  gapPressedMm: gap(-1, (_, right) => right),
  gapPressedTimes: (scene) => {
    const [even, pressed] = [gap(0, (left) => left)(scene), gap(-1, (_, right) => right)(scene)]
    return even === null || pressed === null || even === 0 ? null : pressed / even
  },
  gapPressedMeanMm: gap(-1, (left, right) => (left + right) / 2),
  honedReliefMm: honed,
  secondaryMm: secondary,
  capClearMm: (scene) => {
    const reliefMm = wanted(scene)
    return reliefMm === null ? null : scene.state.bench.capSetbackMm - reliefMm
  },
} as const satisfies Partial<Record<FigureName, Find>>

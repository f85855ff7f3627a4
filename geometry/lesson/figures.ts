import { bandOf, burrAllAlong } from '../band.ts'
import { meanReliefMm } from '../edge.ts'
import { freedomFigures, freePlayOf } from '../freedom.ts'
import type { GrindState } from '../grind.ts'
import { hollowOf } from '../hollow.ts'
import { secondaryWidthMm } from '../honing.ts'
import { pathOf } from '../motion.ts'
import { nearestScale } from '../nearness.ts'
import { anglesInUse, jointOf } from '../plane.ts'
import { behindAt, crownMm, profileOf, profileReliefMm, turnedProfile } from '../profile.ts'
import { reachLimitMm } from '../reach.ts'
import type { Report } from '../report.ts'
import { setUpReport } from '../setUp.ts'
import { cornersIn, cutOf, ridgeMm } from '../shaving.ts'
import { gapUnder, restUnder, type SteelLine } from '../straightedge.ts'
import { hone } from '../strokes.ts'
import { radFromDeg } from '../units.ts'
import type { FigureName } from './figureNames.ts'
import type { Scene } from './scene.ts'

type Find = (scene: Scene) => number | null
type Edge = NonNullable<ReturnType<Scene['edge']>>

const ofEdge =
  (read: (edge: Edge) => number): Find =>
  (scene) => {
    const edge = scene.edge()
    return edge && read(edge)
  }

const ofSetUp =
  (read: (report: Report['setUp']) => number): Find =>
  (scene) => {
    const setUp = scene.setUp()
    return setUp && read(setUpReport(scene.state.job, setUp))
  }

const ofHollow =
  (read: (hollow: Report['hollow']) => number): Find =>
  (scene) => {
    const setUp = scene.setUp()
    return setUp && read(hollowOf(setUp.wheelRadiusMm, setUp.bevelRad, scene.state.job.blade.thicknessMm))
  }

const halfwayMm = (edge: Edge): number => {
  const profile = profileOf(edge.edgeUMm, edge.edgeVMm)
  const quarter = (edge.edgeUMm.at(-1) as number) / 2
  return (behindAt(profile, -quarter) + behindAt(profile, quarter)) / 2
}

/** At the middle, from the corner that stands further forward. */
const middleBehindMm = ({ edgeUMm, edgeVMm }: Edge): number => {
  const nearer = Math.min(edgeVMm[0] as number, edgeVMm.at(-1) as number)
  return Math.max(0, (edgeVMm[edgeUMm.length >> 1] as number) - nearer)
}

/** How far an edge is from the arc nearest to it, as much to one side as to the other. */
const offArcMm = (edge: Edge): number =>
  nearestScale(
    edge.edgeUMm.map((u) => u * u),
    edge.edgeVMm,
  ).deviationMm

const halfPlay =
  (side: 'leftMm' | 'rightMm'): Find =>
  ({ state }) =>
    freePlayOf(state.job)?.[side] ?? null

const ofFreedom =
  (read: (figures: ReturnType<typeof freedomFigures>) => number | null): Find =>
  (scene) => {
    const freedom = scene.freedom()
    return freedom && read(freedomFigures(freedom))
  }

const bare =
  (third: 0 | 1 | 2): Find =>
  (scene) => {
    const left = scene.inkLeft()
    return left && 1 - left[third]
  }

/** Mean of where the middles of the bare columns lie, from edge to heel. */
const inkPlace: Find = (scene) => {
  const middles = scene
    .firstInk()
    ?.columns.flatMap(({ from, to }) => (from === null || to === null ? [] : [(from + to) / 2]))
  return middles?.length ? middles.reduce((sum, each) => sum + each, 0) / middles.length : null
}

/** All of a column's old bevel, from edge to heel. */
const bevelMm = ({ throughCount, vStartMm, nMm }: GrindState, i: number): number => {
  const last = throughCount - 1
  const dv = (vStartMm[i * throughCount + last] as number) - (vStartMm[i * throughCount] as number)
  return Math.hypot(dv, nMm[last] as number)
}

/** What is left of the old bevel at a share of the width; all of it where the wheel never came. */
const bandAt =
  (share: 0 | 0.5 | 1): Find =>
  (scene) => {
    const field = scene.ground()
    if (field === null) return null
    const i = Math.round(share * (field.acrossCount - 1))
    return bandOf(field, i)?.fromEdgeMm ?? bevelMm(field, i)
  }

const bands = [bandAt(0), bandAt(0.5), bandAt(1)] as const

const bandUneven: Find = (scene) => {
  const found = bands.map((band) => band(scene))
  return found.some((mm) => mm === null) ? null : Math.max(...(found as number[])) - Math.min(...(found as number[]))
}

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

/** How each figure is found. */
export const findFigure: Readonly<Record<FigureName, Find>> = {
  dotInPlane,
  reliefMm: ofEdge(meanReliefMm),
  reliefLeftMm: ofEdge(({ reliefLeftMm }) => reliefLeftMm),
  reliefRightMm: ofEdge(({ reliefRightMm }) => reliefRightMm),
  reliefHalfwayMm: ofEdge(halfwayMm),
  halfwayShare: ofEdge((edge) => halfwayMm(edge) / meanReliefMm(edge)),
  skewDeg: ofEdge(({ skewDeg }) => skewDeg),
  leftLessRightMm: ofEdge(({ reliefLeftMm, reliefRightMm }) => reliefLeftMm - reliefRightMm),
  middleBehindMm: ofEdge(middleBehindMm),
  offArcMm: ofEdge(offArcMm),
  edgeLostMm: ofEdge(({ edgeVMm }) => Math.max(...edgeVMm)),
  wantedReliefMm: wanted,
  bevelDeg: ofSetUp(({ bevelAngleDeg }) => bevelAngleDeg),
  chordDeg: ofHollow(({ chordAngleDeg }) => chordAngleDeg),
  hollowDepthMm: ofHollow(({ depthMm }) => depthMm),
  projectionMm: ofSetUp(({ projectionMm }) => projectionMm),
  gapMm: ofSetUp(({ gapMm }) => gapMm),
  barHeightMm: ofSetUp(({ barHeightMm }) => barHeightMm),
  bevelPerMmDeg: ofSetUp(({ bevelPerProjectionDegPerMm }) => -bevelPerProjectionDegPerMm),
  rimSpeedMPerS: ofSetUp(({ rimSpeedMPerS }) => rimSpeedMPerS),
  freePlayLeftMm: halfPlay('leftMm'),
  freePlayRightMm: halfPlay('rightMm'),
  yawLeftDeg: ofFreedom(({ yawLeftDeg }) => yawLeftDeg),
  sweepMm: ofFreedom(({ sweepLeftMm }) => sweepLeftMm),
  reachLimitMm: ({ state: { job } }) => reachLimitMm(pathOf(job.motion), job.blade.widthMm),
  inkPlaceShare: inkPlace,
  inkLeftShare: bare(0),
  inkMiddleShare: bare(1),
  inkRightShare: bare(2),
  bandLeftMm: bands[0],
  bandMiddleMm: bands[1],
  bandRightMm: bands[2],
  bandUnevenMm: bandUneven,
  burrAllAlong: (scene) => {
    const field = scene.ground()
    return field && (burrAllAlong(field) ? 1 : 0)
  },
  woodReliefMm: (scene) => scene.plan()?.woodReliefMm ?? null,
  groundWoodReliefMm: (scene) => {
    const [edge, sine] = [scene.edge(), scene.sine()]
    return edge && sine !== null ? meanReliefMm(edge) * sine : null
  },
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
}

import { freedomFigures, freePlayOf } from '../freedom.ts'
import { hollowOf } from '../hollow.ts'
import { pathOf } from '../motion.ts'
import { reachLimitMm } from '../reach.ts'
import type { Report } from '../report.ts'
import { setUpReport } from '../setUp.ts'
import type { FigureName } from './figureNames.ts'
import type { Find } from './scene.ts'

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

/** What the set-up is before anything is ground: triangle, hollow, freedom, reach. */
export const setUpFigures = {
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
} as const satisfies Partial<Record<FigureName, Find>>

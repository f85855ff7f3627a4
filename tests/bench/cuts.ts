import { acrossMm } from '../../geometry/edge.ts'
import { envelopeSurface } from '../../geometry/envelope.ts'
import { freedomOf } from '../../geometry/freedom.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { exampleJob, found } from '../geometry/example.ts'
import { type CutPose, cutBlade } from '../support/kernel.ts'
import { about, bestMs, inMs, type Row } from './clock.ts'

const POSES = 101
const YAW_DEG = 1.2
const rad = Math.PI / 180

const job = exampleJob({
  grid: { across: 115, through: 17 },
  motion: { yawLeftDeg: YAW_DEG, yawRightDeg: YAW_DEG },
})
const setUp = found(setUpOf(job))
const freedom = found(freedomOf(job, setUp))
const { wheelRadiusMm: R, bevelRad, projectionMm } = setUp
const uMm = acrossMm(job.blade.widthMm, job.grid.across)

const poses: readonly CutPose[] = Array.from({ length: POSES }, (_, k) => ({
  axisVMm: -R * Math.sin(bevelRad),
  axisNMm: R * Math.cos(bevelRad),
  traverseMm: 0,
  yawRad: ((2 * k) / (POSES - 1) - 1) * YAW_DEG * rad,
  rollRad: 0,
  throughUMm: 0,
  throughVMm: projectionMm,
  throughNMm: 0,
}))

/** The edge as the greatest of so many lines, v = L - (L - u sin th) / cos th: what both are judged by. */
const LINES = 100_001
const sampledEdge = (u: number): number => {
  let greatest = Number.NEGATIVE_INFINITY
  for (let k = 0; k < LINES; k++) {
    const th = ((2 * k) / (LINES - 1) - 1) * YAW_DEG * rad
    greatest = Math.max(greatest, projectionMm - (projectionMm - u * Math.sin(th)) / Math.cos(th))
  }
  return greatest
}

/** Both on the same blade and poses, at this many facets of the kernel's wheel. */
export const cutRows = (facets: number): readonly Row[] => {
  const surface = envelopeSurface(job, setUp, freedom)
  if (surface === null) throw new Error('the example has stops')
  const sampled = Array.from(uMm, sampledEdge)
  const worstUm = (edge: (u: number) => number) =>
    1000 * Math.max(...sampled.map((v, i) => Math.abs(edge(uMm[i] as number) - v)))
  const edgeMs = bestMs(200, () => uMm.forEach((u) => void surface(u, 0).vMm))
  const stock = { widthMm: job.blade.widthMm, thicknessMm: job.blade.thicknessMm, bevelRad: null }
  let cut = cutBlade(stock, R, facets, poses.slice(0, 1))
  const kernelMs = bestMs(1, () => {
    cut = cutBlade(stock, R, facets, poses)
  })
  return [
    {
      what: `constant-depth cut, closed form, ${uMm.length} points of the edge`,
      took: inMs(edgeMs),
      against: `${about(kernelMs / edgeMs)} times quicker than the kernel; error ${about(worstUm((u) => surface(u, 0).vMm))} um`,
    },
    {
      what: `the same ${POSES} poses by the solid kernel, ${facets} facets`,
      took: inMs(kernelMs),
      against: `error ${about(worstUm((u) => cut.at(u, 0)))} um`,
    },
  ]
}

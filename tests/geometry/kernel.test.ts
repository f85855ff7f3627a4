import Module from 'manifold-3d'
import { describe, expect, it } from 'vitest'
import { envelopeAt } from '../../geometry/envelope.ts'

/**
 * The same wheel at the same poses, cut out of the same blade by a general solid-modelling kernel (manifold-3d, Apache-2.0),
 * which knows nothing of envelopes. Its wheel has flat facets inside the circle, off by R (1 - cos(pi / n)) at most; seen
 * along the blade at bevel b that is 1 / sin b as much.
 */
const R = 125
const FACETS = 512
const WIDTH = 57
const THICKNESS = 3.2
const PROJECTION = 130
const BEVEL = (25 * Math.PI) / 180
const budgetMm = (R * (1 - Math.cos(Math.PI / FACETS))) / Math.sin(BEVEL)

const kernel = await Module()
kernel.setup()

const wheelAt = (yawRad: number, pivotUMm: number) =>
  kernel.Manifold.cylinder(400, R, R, FACETS, true)
    .rotate([0, 90, 0])
    .translate([0, -R * Math.sin(BEVEL), R * Math.cos(BEVEL)])
    .translate([-pivotUMm, -PROJECTION, 0])
    .rotate([0, 0, (yawRad * 180) / Math.PI])
    .translate([pivotUMm, PROJECTION, 0])

const yaws = (leftDeg: number, rightDeg: number, count: number): number[] =>
  Array.from({ length: count }, (_, k) => ((-leftDeg + ((leftDeg + rightDeg) * k) / (count - 1)) * Math.PI) / 180)

/** v of the edge on the back by u: the outline of the section just above the back, its side towards the wheel. */
const cutEdge = (leftDeg: number, rightDeg: number, pivotUMm: number): readonly (readonly [u: number, v: number])[] => {
  const blade = kernel.Manifold.cube([WIDTH, 30, THICKNESS]).translate([-WIDTH / 2, -2, 0])
  const ground = yaws(leftDeg, rightDeg, 41).reduce((solid, yaw) => solid.subtract(wheelAt(yaw, pivotUMm)), blade)
  return ground
    .slice(1e-7)
    .toPolygons()
    .flat()
    .filter(([, v]) => v < 20)
    .map(([u, v]) => [u, v] as const)
}

describe.each([
  { leftDeg: 1.2, rightDeg: 1.2, pivotUMm: 0 },
  { leftDeg: 0.6, rightDeg: 1.8, pivotUMm: 0 },
  { leftDeg: 1.2, rightDeg: 0.9, pivotUMm: 7 },
])('yaw $leftDeg left, $rightDeg right, pivot at $pivotUMm', ({ leftDeg, rightDeg, pivotUMm }) => {
  it('leaves the edge that the closed form says, within the facets of the kernel', () => {
    const edge = cutEdge(leftDeg, rightDeg, pivotUMm)
    expect(edge.length).toBeGreaterThan(10)
    let worstMm = 0
    for (const [u, v] of edge) {
      const x = u - pivotUMm
      const slope = Math.tan(((x < 0 ? leftDeg : rightDeg) * Math.PI) / 180)
      worstMm = Math.max(worstMm, Math.abs(v - envelopeAt(PROJECTION, x, slope)))
    }
    expect(worstMm).toBeLessThan(budgetMm)
  })
})

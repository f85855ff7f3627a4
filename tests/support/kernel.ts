import Module, { type Manifold, type Vec3 } from 'manifold-3d'

/**
 * The same wheel at the same poses, cut out of the same blade by a general solid-modelling kernel (manifold-3d, Apache-2.0),
 * which knows nothing of envelopes, beds or nodes. Axes x = u, y = v, z = n. Its wheel has flat facets inside the circle,
 * off by R (1 - cos(pi / facets)) at most.
 */
const kernel = await Module()
kernel.setup()

const degrees = 180 / Math.PI

/** Where the wheel's axis stands, and how the fixture has turned the blade, both as the fixture sees them. */
export interface CutPose {
  readonly axisVMm: number
  readonly axisNMm: number
  readonly traverseMm: number
  readonly yawRad: number
  readonly rollRad: number
  /** A point on the axis of yaw (u, v) or roll (u, n). */
  readonly throughUMm: number
  readonly throughVMm: number
  readonly throughNMm: number
}

/** A wheel wider than any iron is shifted. */
const WHEEL_LENGTH_MM = 400

/** The wheel as the blade sees it: the fixture's turn undone. */
const wheelAt = (pose: CutPose, radiusMm: number, facets: number): Manifold => {
  const through: Vec3 = [pose.throughUMm, pose.throughVMm, pose.throughNMm]
  const away: Vec3 = [-through[0], -through[1], -through[2]]
  return kernel.Manifold.cylinder(WHEEL_LENGTH_MM, radiusMm, radiusMm, facets, true)
    .rotate([0, 90, 0])
    .translate([-pose.traverseMm, pose.axisVMm, pose.axisNMm])
    .translate(away)
    .rotate([0, pose.rollRad * degrees, pose.yawRad * degrees])
    .translate(through)
}

export interface Stock {
  readonly widthMm: number
  readonly thicknessMm: number
  /** Null: square across its end. */
  readonly bevelRad: number | null
}

/** The blade's end lies this far below the nominal edge where it has no bevel, its other end above any cut. */
const BELOW_MM = 2
const ABOVE_MM = 40

const stockOf = ({ widthMm, thicknessMm, bevelRad }: Stock): Manifold => {
  const block = kernel.Manifold.cube([widthMm, BELOW_MM + ABOVE_MM, thicknessMm]).translate([
    -widthMm / 2,
    -BELOW_MM,
    0,
  ])
  // Keeps v >= n / tan(bevel).
  return bevelRad === null ? block : block.trimByPlane([0, Math.sin(bevelRad), -Math.cos(bevelRad)], 0)
}

export interface CutBlade {
  readonly volumeMm3: number
  readonly startVolumeMm3: number
  /** v at which material begins at a place. */
  at(uMm: number, nMm: number): number
}

/** A hair inside the blade, so that a section through its very face is one. */
const HAIR_MM = 1e-7

/** Cuts the wheel out of the blade at every pose in turn. */
export const cutBlade = (stock: Stock, radiusMm: number, facets: number, poses: readonly CutPose[]): CutBlade => {
  const start = stockOf(stock)
  const cut = poses.reduce((solid, pose) => solid.subtract(wheelAt(pose, radiusMm, facets)), start)
  const sections = new Map<number, readonly (readonly [number, number])[][]>()
  const sectionAt = (nMm: number) => {
    const level = Math.min(Math.max(nMm, HAIR_MM), stock.thicknessMm - HAIR_MM)
    const known = sections.get(level)
    if (known) return known
    const section = cut.slice(level).toPolygons() as readonly (readonly [number, number])[][]
    sections.set(level, section)
    return section
  }
  const at = (uMm: number, nMm: number): number =>
    lowestCrossing(sectionAt(nMm), Math.min(Math.max(uMm, HAIR_MM - stock.widthMm / 2), stock.widthMm / 2 - HAIR_MM))
  return { volumeMm3: cut.volume(), startVolumeMm3: start.volume(), at }
}

/** Least v at which outlines cross a place across the blade. */
const lowestCrossing = (outlines: readonly (readonly [number, number])[][], uMm: number): number => {
  let lowest = Number.POSITIVE_INFINITY
  for (const outline of outlines)
    for (let k = 0; k < outline.length; k++) {
      const [u0, v0] = outline[k] as readonly [number, number]
      const [u1, v1] = outline[(k + 1) % outline.length] as readonly [number, number]
      if (u0 === u1 || (u0 - uMm) * (u1 - uMm) > 0) continue
      lowest = Math.min(lowest, v0 + ((v1 - v0) * (uMm - u0)) / (u1 - u0))
    }
  return lowest
}

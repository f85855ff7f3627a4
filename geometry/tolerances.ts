/** Tolerances of the engine, each with its reason. Lengths in mm, angles as slopes (dimensionless). */

/**
 * Force balance, relative: a hundred-thousandth of the depth, some hundredths of a nanometre. The wear of a step is shared out by
 * the force found, so the volume is right whatever is left here; against 1e-10 the relief of the example moves by 0.05 nm.
 */
export const FORCE_TOLERANCE = 1e-5

/** Moment balance, relative to load x half width: a third of a micrometre of load place, where a finger is known to millimetres. */
export const MOMENT_TOLERANCE = 1e-5

/** What rounding leaves of a tilt: sine and cosine near 1 have grains of 1.1e-16, a few of which meet in a distance. */
export const TILT_GRAIN = 1e-15

/** Bracket of the fixture's turn, as a slope: 1e-13 over 60 mm is a hundred-thousandth of a nanometre; below this bisection only shuffles rounding. */
export const TURN_BRACKET = 1e-13

/** Most evaluations of one balance before it is called lost; ordinary steps take fewer than ten. */
export const BALANCE_PASSES = 2000

/** An edge counts as formed when a tenth more removal moves its relief by less than this (mm). */
export const FORMED_CHANGE_MM = 1e-4

/** A corner that moved less than this (mm) was not touched: a thousandth of a micrometre, above rounding, below any contact. */
export const UNTOUCHED_MM = 1e-6

/** How near the inverse brings the relief to the aim (mm): a fifth of what a feeler gauge can tell. */
export const RELIEF_AIM_MM = 1e-3

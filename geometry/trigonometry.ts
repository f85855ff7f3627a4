/**
 * Sine, cosine, tangent and their inverses from + - x / and square root alone. Math's own functions differ in their last
 * bits between builds of the same engine, and a job must replay to the byte on every host. Slow, so used at the door only;
 * the stepping code works with slopes and unit vectors.
 *
 * Values are carried as unevaluated sums hi + lo of two doubles (Dekker 1971, "A floating-point technique for extending
 * the available precision"), so the one rounding that counts is the last. Checked within 1 ulp of Math's in tests/geometry.
 */
type Pair = readonly [hi: number, lo: number]

/** A constant, the same on every host; only Math's functions are not. */
export const PI = Math.PI
const PI_PAIR: Pair = [PI, 1.2246467991473532e-16]
const HALF_PI_PAIR: Pair = [PI / 2, 6.123233995736766e-17]

/** 2^27 + 1 splits a double into two halves whose product is exact (Veltkamp). */
const SPLITTER = 134217729

const renormalise = (a: number, b: number): Pair => {
  const hi = a + b
  return [hi, b - (hi - a)]
}

const sum = (a: Pair, b: Pair): Pair => {
  const hi = a[0] + b[0]
  const part = hi - a[0]
  const error = a[0] - (hi - part) + (b[0] - part)
  return renormalise(hi, error + a[1] + b[1])
}

const productOfDoubles = (a: number, b: number): Pair => {
  const hi = a * b
  const ta = SPLITTER * a
  const aHigh = ta - (ta - a)
  const aLow = a - aHigh
  const tb = SPLITTER * b
  const bHigh = tb - (tb - b)
  const bLow = b - bHigh
  return [hi, aLow * bLow - (hi - aHigh * bHigh - aLow * bHigh - aHigh * bLow)]
}

const product = (a: Pair, b: Pair): Pair => {
  const p = productOfDoubles(a[0], b[0])
  return renormalise(p[0], p[1] + a[0] * b[1] + a[1] * b[0])
}

const quotient = (a: Pair, b: Pair): Pair => {
  const first = a[0] / b[0]
  const rest = sum(a, product([-first, 0], b))
  return renormalise(first, rest[0] / b[0])
}

const negative = (a: Pair): Pair => [-a[0], -a[1]]

/** Terms of the series: for an angle up to pi/4, (pi/4)^27 / 27! is below 1e-31, the precision of a pair. */
const LAST_POWER = 27

/** Alternating Taylor series from x^first/first!, first 0 (cosine) or 1 (sine). */
const series = (x: Pair, first: 0 | 1): Pair => {
  const square = negative(product(x, x))
  let term: Pair = first === 0 ? [1, 0] : x
  let total = term
  for (let power = first + 2; power <= LAST_POWER; power += 2) {
    term = quotient(product(term, square), [power * (power - 1), 0])
    total = sum(total, term)
  }
  return total
}

/** Sine and cosine as pairs; the angle is brought within pi/4 by whole quarter turns first. */
const sinCosPair = (x: Pair): readonly [sine: Pair, cosine: Pair] => {
  const quarters = Math.round(x[0] / HALF_PI_PAIR[0])
  const reduced = sum(x, product([-quarters, 0], HALF_PI_PAIR))
  const s = series(reduced, 1)
  const c = series(reduced, 0)
  switch (((quarters % 4) + 4) % 4) {
    case 0:
      return [s, c]
    case 1:
      return [c, negative(s)]
    case 2:
      return [negative(s), negative(c)]
    default:
      return [negative(c), s]
  }
}

const value = (a: Pair): number => a[0] + a[1]

/** @param rad an angle in radians, |rad| below a thousand turns */
export const sin = (rad: number): number => value(sinCosPair([rad, 0])[0])

/** @param rad an angle in radians, |rad| below a thousand turns */
export const cos = (rad: number): number => value(sinCosPair([rad, 0])[1])

/** @param rad an angle in radians, |rad| below a thousand turns */
export const tan = (rad: number): number => {
  const [s, c] = sinCosPair([rad, 0])
  return value(quotient(s, c))
}

/** First guess for an arctangent of 0..1, good to 0.005 rad (a parabola through the ends and the middle slope). */
const roughAtan = (x: number): number => x * (PI / 4 + 0.273 * (1 - x))

/** Arctangent of 0..1: the tangent of what is still missing is (x c - s) / (c + x s); its cube is below 1e-31 by the third turn. */
const atanUnit = (x: Pair): Pair => {
  let angle: Pair = [roughAtan(x[0]), 0]
  for (let turn = 0; turn < 3; turn++) {
    const [s, c] = sinCosPair(angle)
    const missing = quotient(sum(product(x, c), negative(s)), sum(c, product(x, s)))
    angle = sum(angle, missing)
  }
  return angle
}

const atanPositive = (y: Pair, x: Pair): Pair =>
  y[0] <= x[0] ? atanUnit(quotient(y, x)) : sum(HALF_PI_PAIR, negative(atanUnit(quotient(x, y))))

const atan2Pair = (y: Pair, x: Pair): number => {
  if (y[0] === 0 && x[0] === 0) return 0
  const upper = atanPositive(y[0] < 0 ? negative(y) : y, x[0] < 0 ? negative(x) : x)
  const folded = x[0] < 0 ? sum(PI_PAIR, negative(upper)) : upper
  return y[0] < 0 ? -value(folded) : value(folded)
}

/** Angle of the point (x, y) from the x axis, -pi to pi; 0 at the origin. */
export const atan2 = (y: number, x: number): number => atan2Pair([y, 0], [x, 0])

/** @returns the angle whose tangent is x, -pi/2 to pi/2 */
export const atan = (x: number): number => atan2(x, 1)

const squareRoot = (a: Pair): Pair => {
  if (a[0] <= 0) return [0, 0]
  const root = Math.sqrt(a[0])
  const rest = sum(a, negative(productOfDoubles(root, root)))
  return renormalise(root, rest[0] / (2 * root))
}

/** @param x a sine, -1 to 1 @returns its angle, -pi/2 to pi/2; NaN outside */
export const asin = (x: number): number => {
  if (!(Math.abs(x) <= 1)) return Number.NaN
  return atan2Pair([x, 0], squareRoot(sum([1, 0], negative(productOfDoubles(x, x)))))
}

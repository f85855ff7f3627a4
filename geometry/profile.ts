import { cos, tan } from './trigonometry.ts'
import { radFromDeg } from './units.ts'

/** An edge line by points across, left first: how far each lies behind the foremost one. */
export interface Profile {
  readonly uMm: readonly number[]
  readonly behindMm: readonly number[]
}

const at = (list: readonly number[], i: number): number => list[i] as number

/** Counts depths from the foremost point, whatever they were counted from. */
export const profileOf = (uMm: readonly number[], vMm: readonly number[]): Profile => {
  const foremost = vMm.reduce((a, b) => Math.min(a, b))
  return { uMm, behindMm: vMm.map((v) => v - foremost) }
}

/** Mean of both corners' relief. */
export const profileReliefMm = ({ behindMm }: Profile): number =>
  (at(behindMm, 0) + at(behindMm, behindMm.length - 1)) / 2

/** Height at u, straight between points; infinite beyond the corners, where there is no edge. */
export const behindAt = ({ uMm, behindMm }: Profile, u: number): number => {
  const next = uMm.findIndex((place) => place >= u)
  if (next < 0 || (next === 0 && u < at(uMm, 0))) return Number.POSITIVE_INFINITY
  if (next === 0) return at(behindMm, 0)
  const share = (u - at(uMm, next - 1)) / (at(uMm, next) - at(uMm, next - 1))
  return at(behindMm, next - 1) * (1 - share) + at(behindMm, next) * share
}

/**
 * The edge turned by the lateral lever, + sets the right corner back, measured again from its foremost point. Small angles:
 * v + u tan a. An arc's crown moves by r tan a: 57 mm with 0.05 mm of relief has r 8,122.5 mm, so 0.1 degree moves it 14.2 mm.
 */
export const turnedProfile = ({ uMm, behindMm }: Profile, turnDeg: number): Profile => {
  const slope = tan(radFromDeg(turnDeg))
  return profileOf(
    uMm,
    behindMm.map((v, i) => v + at(uMm, i) * slope),
  )
}

/** Left and right changed over: a bevel-up iron goes into its plane with the back that was up at the wheel facing down. */
export const mirroredProfile = ({ uMm, behindMm }: Profile): Profile => ({
  uMm: uMm.map((u) => -u).reverse(),
  behindMm: [...behindMm].reverse(),
})

/** The edge as the wood meets it with the plane held askew to its way: narrower by the cosine, heights as they are. */
export const skewedProfile = ({ uMm, behindMm }: Profile, skewDeg: number): Profile => {
  const narrower = cos(radFromDeg(skewDeg))
  return { uMm: uMm.map((u) => u * narrower), behindMm }
}

/** Where the foremost point is (mm from the middle); of several, the middle one. */
export const crownMm = ({ uMm, behindMm }: Profile): number => {
  const foremost = behindMm.reduce((a, b) => Math.min(a, b))
  const crowns = uMm.filter((_, i) => behindMm[i] === foremost)
  return at(crowns, crowns.length >> 1)
}

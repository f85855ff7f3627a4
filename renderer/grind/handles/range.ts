/** What a handle can be set to, in its quantity's unit. Both limits are whole snaps. */
export interface Range {
  readonly min: number
  readonly max: number
  /** The step in which it is taken. */
  readonly snap: number
}

/** Snaps that Shift, Page up and Page down make of one. */
const PAGE_SNAPS = 10

/** Multiples of a snap carry no more decimals than this; the rest is dust of the reckoning. */
const DECIMALS = 6

const at = (snaps: number, { min, max, snap }: Range): number =>
  Number(Math.min(Math.max(snaps * snap, min), max).toFixed(DECIMALS))

/** @returns the nearest whole snap, within the limits */
export const snapped = (value: number, range: Range): number => at(Math.round(value / range.snap), range)

/** Two values nearer than this are the same one, in snaps. */
const SAME_SNAPS = 1e-6

/** Whether it goes no further that way; what moves there says so. */
export const atLimit = (value: number, { min, max, snap }: Range): boolean =>
  value <= min + SAME_SNAPS * snap || value >= max - SAME_SNAPS * snap

/** From a value between two snaps the first step goes to the next snap. */
const moved = (value: number, snaps: number, range: Range): number => {
  const place = value / range.snap
  return at(snaps > 0 ? Math.floor(place + SAME_SNAPS) + snaps : Math.ceil(place - SAME_SNAPS) + snaps, range)
}

/** Keys that move a handle, in snaps. */
const moves: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
  PageUp: PAGE_SNAPS,
  PageDown: -PAGE_SNAPS,
}

/** What a key makes of a value: arrows one snap, with Shift or by Page up and Page down ten, Home and End the limits; null: not a handle's key. */
export const keyed = (key: string, shift: boolean, value: number, range: Range): number | null => {
  if (key === 'Home') return range.min
  if (key === 'End') return range.max
  const snaps = moves[key]
  if (snaps === undefined) return null
  return moved(value, shift && Math.abs(snaps) === 1 ? snaps * PAGE_SNAPS : snaps, range)
}

/**
 * The furthest whole snap on the way to `towards` that can still be, by halving: what can be lies together round `from`.
 * @param canBe asked for whole snaps; `from` itself, which can be, may lie between two
 */
export const furthest = (canBe: (value: number) => boolean, from: number, towards: number, snap: number): number => {
  const sign = towards < from ? -1 : 1
  const first = sign > 0 ? Math.floor(from / snap + SAME_SNAPS) : Math.ceil(from / snap - SAME_SNAPS)
  const most = sign > 0 ? Math.floor(towards / snap + SAME_SNAPS) : Math.ceil(towards / snap - SAME_SNAPS)
  const value = (snaps: number): number => Number(((first + sign * snaps) * snap).toFixed(DECIMALS))
  let [good, bad] = [0, Math.max(sign * (most - first), 0) + 1]
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2)
    if (canBe(value(middle))) good = middle
    else bad = middle
  }
  return value(good)
}

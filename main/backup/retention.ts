import type { Copy } from './copies.ts'

const HOUR_MS = 3_600_000
const DAY_MS = 24 * HOUR_MS
const WEEK_MS = 7 * DAY_MS

/** How copies thin out as they grow old: within `untilMs` of age the newest of each stretch is kept. */
const ladder: readonly { readonly untilMs: number; stretchOf(at: Date): string }[] = [
  { untilMs: DAY_MS, stretchOf: (at) => `hour ${Math.floor(at.getTime() / HOUR_MS)}` },
  { untilMs: 14 * DAY_MS, stretchOf: (at) => `day ${Math.floor(at.getTime() / DAY_MS)}` },
  { untilMs: 8 * WEEK_MS, stretchOf: (at) => `week ${Math.floor(at.getTime() / WEEK_MS)}` },
  { untilMs: Number.POSITIVE_INFINITY, stretchOf: (at) => `month ${at.toISOString().slice(0, 7)}` },
]

/** Copies made before something was done to the file, kept of each kind: enough to go back past a slip noticed late. */
const BEFORE_KEPT = 5
/** Whatever they weigh, so many of the newest stay: one copy may be the very one that is bad. */
const ALWAYS_KEPT = 2

const stretchOf = ({ at, kind }: Copy, now: Date): string => {
  const made = new Date(at)
  // A clock gone backwards leaves copies from the future; they count as just made.
  const ageMs = Math.max(now.getTime() - made.getTime(), 0)
  const rung = ladder.find(({ untilMs }) => ageMs < untilMs)
  return `${kind} ${rung?.stretchOf(made)}`
}

/** One of each stretch, and the last few of those made before something. */
const thinned = (newestFirst: readonly Copy[], now: Date): readonly Copy[] => {
  const stretches = new Set<string>()
  const before = { beforeUpdate: 0, beforeGoingBack: 0 }
  return newestFirst.filter((copy) => {
    if (copy.kind !== 'kept') return ++before[copy.kind] <= BEFORE_KEPT
    const stretch = stretchOf(copy, now)
    if (stretches.has(stretch)) return false
    stretches.add(stretch)
    return true
  })
}

/**
 * Which copies may go: hourly for a day, daily for two weeks, weekly for eight, then monthly, as long as all of them
 * together weigh no more than `mostBytes`; beyond that the oldest go first, and before them those from the future.
 */
export const copiesToDrop = (copies: readonly Copy[], now: Date, mostBytes: number): readonly Copy[] => {
  // A clock that once went wrong must not let copies of a day to come push out those of today.
  const today = now.toISOString()
  const order = ({ at }: Copy): string => `${at <= today ? 1 : 0} ${at}`
  const newestFirst = [...copies].sort((a, b) => order(b).localeCompare(order(a)))
  let bytes = 0
  const kept = thinned(newestFirst, now).filter((copy, place) => {
    bytes += copy.bytes
    return place < ALWAYS_KEPT || bytes <= mostBytes
  })
  return newestFirst.filter((copy) => !kept.includes(copy))
}

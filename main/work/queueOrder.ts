import { type Face, faces, type Why } from '../contract/day.ts'

/** What of an iron decides where it stands in a day's queue. */
export interface Queued {
  readonly code: string
  readonly stationCode: string
  readonly fixtureCode: string
  /** Axle to bar's axis. */
  readonly barDistanceMm: number
  /** Free play of both sides together; 0: none. */
  readonly freePlayMm: number
  readonly face: Face
}

export interface Placed<T> {
  readonly iron: T
  /** Reasons in words' codes: what it is to the wheel's face, then what changes from the iron before. */
  readonly why: readonly Why[]
}

/** Bars closer than this (mm) are one setting: a caliper on a bar tells no finer, and 0.1 mm is 0.05 degree of bevel or less. */
export const SAME_BAR_MM = 0.1
/** Free play closer than this (mm) is one setting of the stops: a fortieth of a turn of a common screw. */
export const SAME_PLAY_MM = 0.02

const byCode = (a: string, b: string): number => a.length - b.length || (a < b ? -1 : a > b ? 1 : 0)

/** The groups of a list by a code, the one at hand first, the others by their codes. */
const groupsBy = <T>(irons: readonly T[], codeOf: (iron: T) => string, atHand: string | null): readonly T[][] => {
  const groups = [...Map.groupBy(irons, codeOf)]
  const rank = (code: string): number => (code === atHand ? 0 : 1)
  return groups.sort(([a], [b]) => rank(a) - rank(b) || byCode(a, b)).map(([, group]) => group)
}

/** Irons that a bar need not be moved between, each group measured from its first. */
const sameBars = <T extends Queued>(irons: readonly T[]): readonly T[][] => {
  const rising = irons.toSorted((a, b) => a.barDistanceMm - b.barDistanceMm || byCode(a.code, b.code))
  const groups: T[][] = []
  for (const iron of rising) {
    const first = groups.at(-1)?.[0]
    if (first && iron.barDistanceMm - first.barDistanceMm <= SAME_BAR_MM) groups.at(-1)?.push(iron)
    else groups.push([iron])
  }
  return groups
}

/** From the end that the bar stands nearer to, so that it travels one way. @param barMm where it stands; null: nobody knows */
const alongTheBar = <T extends Queued>(irons: readonly T[], barMm: number | null): readonly T[] => {
  const rising = sameBars(irons)
  const [lowMm = 0, highMm = 0] = [rising[0]?.[0]?.barDistanceMm, rising.at(-1)?.[0]?.barDistanceMm]
  const down = barMm !== null && Math.abs(barMm - highMm) < Math.abs(barMm - lowMm)
  const groups = down ? rising.toReversed() : rising
  return groups.flatMap((group) => group.toSorted((a, b) => a.freePlayMm - b.freePlayMm || byCode(a.code, b.code)))
}

/** One wheel's irons: straight, curved, roughing; in each the fixture is changed least, then the bar. */
const atWheel = <T extends Queued>(irons: readonly T[], fixtureAtHand: string | null): readonly T[] => {
  const order: T[] = []
  for (const face of faces) {
    const some = irons.filter((iron) => iron.face === face)
    const atHand = order.at(-1)?.fixtureCode ?? fixtureAtHand
    for (const group of groupsBy(some, ({ fixtureCode }) => fixtureCode, atHand))
      order.push(...alongTheBar(group, order.at(-1)?.barDistanceMm ?? null))
  }
  return order
}

const change = (before: Queued | null, iron: Queued): Why => {
  const why = (code: string, params: Why['params'] = {}): Why => ({ code, params })
  if (before === null) return why('first')
  if (before.stationCode !== iron.stationCode) return why('otherStation')
  if (before.fixtureCode !== iron.fixtureCode) return why('otherFixture')
  const byMm = iron.barDistanceMm - before.barDistanceMm
  if (Math.abs(byMm) > SAME_BAR_MM) return why(byMm > 0 ? 'barOut' : 'barIn', { byMm: Math.abs(byMm) })
  return why(Math.abs(iron.freePlayMm - before.freePlayMm) > SAME_PLAY_MM ? 'sameBar' : 'sameAll')
}

const reasons = (before: Queued | null, iron: Queued): readonly Why[] => {
  const begins = before === null || before.stationCode !== iron.stationCode || before.face !== iron.face
  const face: readonly Why[] = begins && iron.face !== 'curved' ? [{ code: iron.face, params: {} }] : []
  return [...face, change(before, iron)]
}

/**
 * A day's irons in the order that changes set-ups least: by wheel; on each the straight irons while its face is true from dressing,
 * roughing ones last since they wear it hollow; by fixture; by where the bar stands, which travels one way; by free play; by code.
 * The same irons give the same order, however they come.
 */
export const queueOrder = <T extends Queued>(irons: readonly T[]): readonly Placed<T>[] => {
  const order: T[] = []
  for (const wheel of groupsBy(irons, ({ stationCode }) => stationCode, null))
    order.push(...atWheel(wheel, order.at(-1)?.fixtureCode ?? null))
  return order.map((iron, i) => ({ iron, why: reasons(order[i - 1] ?? null, iron) }))
}

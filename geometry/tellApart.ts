import { type Cause, type SquareReading, skewPer, unaccounted } from './squareness.ts'

/** What a further reading may do otherwise to tell causes apart. */
export const ways = ['clamp', 'blunter', 'sharper', 'dress', 'stops'] as const
export type Way = (typeof ways)[number]

/** Bevel of another reading, more or less (degrees): irons are ground from about 15 to 50, so that one or the other can be had. */
const OTHER_BEVEL_DEG = 15
const BEVELS_DEG = { least: 15, most: 50 }

/** Standard errors that two causes have to differ by in the further reading. */
const TELLS = 3

/** Slope of a cause in the further reading; null where the way cannot be gone. Clamped anew, the mounting is no longer what it was. */
const slopeAfter = (way: Way, cause: Cause, reading: SquareReading): number | null => {
  const { bevelDeg } = reading
  const [blunter, sharper] = [bevelDeg + OTHER_BEVEL_DEG, bevelDeg - OTHER_BEVEL_DEG]
  switch (way) {
    case 'clamp':
      return cause === 'mounting' ? 0 : skewPer(cause, reading)
    case 'blunter':
      return blunter > BEVELS_DEG.most ? null : skewPer(cause, { ...reading, bevelDeg: blunter })
    case 'sharper':
      return sharper < BEVELS_DEG.least ? null : skewPer(cause, { ...reading, bevelDeg: sharper })
    case 'dress':
      return skewPer(cause, { ...reading, dressed: true })
    case 'stops':
      return skewPer(cause, { ...reading, guideArmMm: null })
  }
}

/**
 * Ways that would really tell some of a group apart, each made as large as the reading most askew needs it: what they foretell
 * of the further reading has to differ by more than a square leaves unsure.
 */
export const tellApart = (group: readonly Cause[], readings: readonly SquareReading[]): readonly Way[] => {
  const most = [...readings].sort((a, b) => Math.abs(unaccounted(b)) - Math.abs(unaccounted(a)))[0]
  if (most === undefined) return []
  return ways.filter((way) => {
    const foretold = group.flatMap((cause) => {
      const [now, then] = [skewPer(cause, most), slopeAfter(way, cause, most)]
      return now === 0 || then === null ? [] : [(unaccounted(most) * then) / now]
    })
    return Math.max(...foretold) - Math.min(...foretold) > TELLS * most.errorDeg
  })
}

import type { MeasureNotice } from './measure.ts'
import type { GapPoint } from './measurePoints.ts'
import { inOrder, placesAgain, placesEnough } from './places.ts'
import { type ProfileRow, profileRows } from './profileLines.ts'
import { quantities } from './quantities.ts'
import { failed, ok, type Problem, problem, type Result } from './result.ts'

/** How the figures of a file are to be taken: nothing of it is guessed. */
export interface ProfileTaking {
  /** Millimetres in one unit of the file. */
  readonly placeUnitMm: number
  readonly heightUnitMm: number
  /** Places counted from the iron's middle, or from its left corner. */
  readonly from: 'middle' | 'leftCorner'
  /** Second figures: light under a straightedge, or heights of the edge over some line. */
  readonly of: 'gaps' | 'heights'
}

/** Points of a file, and what was done to them on the way; notices have words under `problems:<code>`. */
export interface TakenProfile {
  readonly points: readonly GapPoint[]
  readonly rows: number
  readonly notices: readonly MeasureNotice[]
}

/** Longest file read: a profile of a million rows is no edge (characters). */
export const MOST_CHARACTERS = 4_000_000
/** More points than this say no more about an edge: neighbours are then taken together. */
export const MOST_KEPT = 401

/** Neighbours taken together by their mean, in as many groups as are kept. */
const thinned = (points: readonly GapPoint[]): readonly GapPoint[] => {
  if (points.length <= MOST_KEPT) return points
  const mean = (part: readonly GapPoint[], key: keyof GapPoint) =>
    part.reduce((sum, p) => sum + p[key], 0) / part.length
  return Array.from({ length: MOST_KEPT }, (_, k) => {
    const part = points.slice(
      Math.floor((k * points.length) / MOST_KEPT),
      Math.floor(((k + 1) * points.length) / MOST_KEPT),
    )
    return { uMm: mean(part, 'uMm'), gapMm: mean(part, 'gapMm') }
  })
}

/** Places and gaps in millimetres, in the order of the file; heights become gaps under their highest. */
const inMm = (rows: readonly ProfileRow[], taking: ProfileTaking, widthMm: number): readonly GapPoint[] => {
  const { placeUnitMm, heightUnitMm, from, of } = taking
  const shiftMm = from === 'middle' ? 0 : -widthMm / 2
  const highest = rows.reduce((most, { height }) => Math.max(most, height), Number.NEGATIVE_INFINITY)
  return rows.map(({ place, height }) => ({
    uMm: place * placeUnitMm + shiftMm,
    gapMm: (of === 'gaps' ? height : highest - height) * heightUnitMm,
  }))
}

/** What no edge has: a gap less than none or deeper than any, places off the iron, too few of them. @param points left first */
const impossible = (points: readonly GapPoint[], widthMm: number): Problem | null => {
  const [leastMm, mostMm] = [(points[0] as GapPoint).uMm, (points.at(-1) as GapPoint).uMm]
  if (leastMm < -widthMm / 2 || mostMm > widthMm / 2)
    return problem('profileBeyond', 'file', { leastMm, mostMm, halfMm: widthMm / 2 })
  const deepestMm = points.reduce((most, { gapMm }) => Math.max(most, gapMm), 0)
  const limitMm = quantities.measure.leafMm.max
  if (deepestMm > limitMm) return problem('profileTooDeep', 'file', { deepestMm, limitMm })
  return placesEnough(points) ? null : problem('placesTooFew', 'file')
}

const negativeGap = (rows: readonly ProfileRow[], { of, heightUnitMm }: ProfileTaking): Problem | null => {
  const row = of === 'gaps' ? rows.find(({ height }) => height < 0) : undefined
  return row ? problem('profileNegative', 'file', { line: row.line, gapMm: row.height * heightUnitMm }) : null
}

const noticesOf = (read: readonly GapPoint[], kept: readonly GapPoint[]): readonly MeasureNotice[] => [
  ...(inOrder(read) ? [] : [{ code: 'profileSorted', params: {} }]),
  ...placesAgain(read),
  ...(kept.length < read.length ? [{ code: 'profileThinned', params: { rows: read.length, kept: kept.length } }] : []),
]

/**
 * Reads a profile from two columns of text: place across and gap or height.
 * @returns the points, left first, or `profileTooLong`, what `profileRows` refuses, `profileNegative`, `profileBeyond`,
 * `profileTooDeep`, `placesTooFew`; nothing is read in part
 */
export const readProfileText = (text: string, taking: ProfileTaking, widthMm: number): Result<TakenProfile> => {
  if (text.length > MOST_CHARACTERS) return failed(problem('profileTooLong', 'file', { most: MOST_CHARACTERS }))
  const rows = profileRows(text)
  if (!rows.ok) return rows
  const read = inMm(rows.value, taking, widthMm)
  const points = [...read].sort((a, b) => a.uMm - b.uMm)
  const wrong = negativeGap(rows.value, taking) ?? impossible(points, widthMm)
  if (wrong) return failed(wrong)
  const kept = thinned(points)
  return ok({ points: kept, rows: points.length, notices: noticesOf(read, kept) })
}

import type { GapPoint } from './measurePoints.ts'
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
  readonly notices: readonly { readonly code: string; readonly params: Problem['params'] }[]
}

/** Longest file read: a profile of a million rows is no edge (characters). */
export const MOST_CHARACTERS = 4_000_000
/** More points than this say no more about an edge: neighbours are then taken together. */
export const MOST_KEPT = 401
const FEWEST_ROWS = 3

const FIGURE = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?$/i

const figureOf = (cell: string): number | null => {
  const text = cell.trim().replace(/−/g, '-')
  return FIGURE.test(text) ? Number(text.replace(',', '.')) : null
}

interface Line {
  readonly number: number
  readonly text: string
}

/** Lines with something in them; `#` begins a remark. */
const linesOf = (text: string): readonly Line[] =>
  text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .map((line, i) => ({ number: i + 1, text: line.trim() }))
    .filter((line) => line.text !== '' && !line.text.startsWith('#'))

/**
 * What parts the figures of a line. Comma and point are decimal marks; a comma parts two figures only where nothing else
 * does and every line has just one, so that `1,5,0,2` is refused and never read as 1 and 5.
 */
const separatorOf = (lines: readonly Line[]): RegExp | null => {
  const every = (test: (text: string) => boolean) => lines.every((line) => test(line.text))
  if (every((text) => text.includes('\t'))) return /\t/
  if (every((text) => text.includes(';'))) return /;/
  if (every((text) => text.split(',').length === 2)) return /,/
  if (every((text) => /\s/.test(text) && !/,\s|\s,/.test(text))) return /\s+/
  return null
}

const withoutHeader = (lines: readonly Line[]): readonly Line[] =>
  lines[0]?.text.split(/[\t;,\s]+/).every((cell) => figureOf(cell) === null) ? lines.slice(1) : lines

const pointOf = (line: Line, separator: RegExp): Result<readonly [number, number]> => {
  const cells = line.text.split(separator)
  if (cells.length !== 2) return failed(problem('profileCells', 'file', { line: line.number, cells: cells.length }))
  const [place, height] = cells.map(figureOf)
  if (place == null || height == null)
    return failed(problem('profileFigure', 'file', { line: line.number, text: line.text.slice(0, 40) }))
  return ok([place, height])
}

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

/** Places and gaps in millimetres; heights become gaps under their highest. */
const inMm = (rows: readonly (readonly [number, number])[], taking: ProfileTaking, widthMm: number): GapPoint[] => {
  const { placeUnitMm, heightUnitMm, from, of } = taking
  const shiftMm = from === 'middle' ? 0 : -widthMm / 2
  const sign = of === 'gaps' ? 1 : -1
  const points = rows.map(([place, height]) => ({
    uMm: place * placeUnitMm + shiftMm,
    gapMm: sign * height * heightUnitMm,
  }))
  const least = points.reduce((lowest, { gapMm }) => Math.min(lowest, gapMm), Number.POSITIVE_INFINITY)
  const liftMm = of === 'heights' || least < 0 ? least : 0
  return points.map(({ uMm, gapMm }) => ({ uMm, gapMm: gapMm - liftMm })).sort((a, b) => a.uMm - b.uMm)
}

const rowsOf = (lines: readonly Line[], separator: RegExp): Result<readonly (readonly [number, number])[]> => {
  const rows: (readonly [number, number])[] = []
  for (const line of lines) {
    const row = pointOf(line, separator)
    if (!row.ok) return row
    rows.push(row.value)
  }
  return ok(rows)
}

/**
 * Reads a profile from two columns of text: place across and gap or height.
 * @returns the points, or `profileTooLong`, `profileTooFew`, `profileSeparator`, `profileCells`, `profileFigure`,
 * `profileBeyond`, each with its line where it has one; nothing is read in part
 */
export const readProfileText = (text: string, taking: ProfileTaking, widthMm: number): Result<TakenProfile> => {
  if (text.length > MOST_CHARACTERS) return failed(problem('profileTooLong', 'file', { most: MOST_CHARACTERS }))
  const lines = withoutHeader(linesOf(text))
  if (lines.length < FEWEST_ROWS) return failed(problem('profileTooFew', 'file', { rows: lines.length }))
  const separator = separatorOf(lines)
  if (separator === null) return failed(problem('profileSeparator', 'file'))
  const rows = rowsOf(lines, separator)
  if (!rows.ok) return rows
  const points = inMm(rows.value, taking, widthMm)
  const [first, last] = [points[0] as GapPoint, points.at(-1) as GapPoint]
  if (first.uMm < -widthMm / 2 || last.uMm > widthMm / 2)
    return failed(problem('profileBeyond', 'file', { leastMm: first.uMm, mostMm: last.uMm, halfMm: widthMm / 2 }))
  const kept = thinned(points)
  const notices =
    kept.length < points.length ? [{ code: 'profileThinned', params: { rows: points.length, kept: kept.length } }] : []
  return ok({ points: kept, rows: points.length, notices })
}

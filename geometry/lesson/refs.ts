import { type FigureName, figureNames } from './figureNames.ts'

/** What a reference names: a figure, or an entry of the state, of a case or (null) of the state as it is. */
export interface Ref {
  readonly of: string | null
  readonly figure: FigureName | null
  /** `job.motion.sweeps` or `bench.leverDeg`; empty for a figure. */
  readonly place: string
}

const isFigure = (name: string): name is FigureName => (figureNames as readonly string[]).includes(name)

const CASE = '[a-z][A-Za-z0-9]*'
const PLACE = /^(?:job\.[a-z]+|bench|second)\.[A-Za-z0-9]+$/

/** @returns null for a text that names nothing */
export const refOf = (text: string): Ref | null => {
  if (isFigure(text)) return { of: null, figure: text, place: '' }
  if (PLACE.test(text)) return { of: null, figure: null, place: text }
  const [, of = '', rest = ''] = new RegExp(`^(${CASE})\\.(.+)$`).exec(text) ?? []
  if (isFigure(rest)) return { of, figure: rest, place: '' }
  return PLACE.test(rest) ? { of, figure: null, place: rest } : null
}

export const isRef = (text: string): boolean => refOf(text) !== null

/** References that stand in a text between double braces. */
export const refsIn = (text: string): readonly string[] =>
  [...text.matchAll(/\{\{\s*([^{}]+?)\s*\}\}/g)].map(([, inside]) => inside as string)

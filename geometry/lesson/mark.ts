import type { LessonValues } from './findings.ts'
import type { Ask, Condition } from './lesson.ts'

/** What a learner answers: a figure, the number of a choice, an edge at five places; `moved`: the model itself is the answer. */
export type Answer =
  | { readonly kind: 'predict'; readonly value: number }
  | { readonly kind: 'reach' }
  | { readonly kind: 'choose'; readonly choice: number }
  | { readonly kind: 'draw'; readonly behindMm: readonly number[] }

/** How an answer compares with the engine. */
export interface Mark {
  readonly right: boolean
  /** How far off, in the figure's unit; null where nothing is measured. */
  readonly off: number | null
  /** What the engine has: the figure, the target, or the number of the choice. Null for an edge, or where nothing is found. */
  readonly is: number | null
}

const numberOf = (values: LessonValues, ref: number | string): number | null =>
  typeof ref === 'number' ? ref : (values[ref]?.value ?? null)

const holds = (values: LessonValues, { figure, is, than, by }: Condition): boolean => {
  const [a, b] = [numberOf(values, figure), numberOf(values, than)]
  if (a === null || b === null) return false
  if (is === 'more') return a - b > by
  if (is === 'less') return b - a > by
  return Math.abs(a - b) <= by
}

type Choose = Extract<Ask, { kind: 'choose' }>

/** @returns the numbers of all choices whose conditions hold; a sound lesson has one */
export const rightChoices = ({ choices }: Choose, values: LessonValues): readonly number[] =>
  choices.flatMap(({ when }, k) => (when.every((condition) => holds(values, condition)) ? [k] : []))

/** Everything drawn is measured from its own foremost place, as relief is. */
const fromForemost = (behindMm: readonly number[]): readonly number[] => {
  const foremost = Math.min(...behindMm)
  return behindMm.map((v) => v - foremost)
}

/** Figures that are written alike are alike, however little a lesson allows: half of the last shown digit. */
const alike = (values: LessonValues, figure: string): number => 0.5 * 10 ** -(values[figure]?.decimals ?? 0)

/** Rounding of the machine is no error. */
const DUST = 1e-9

const within = (off: number, allowed: number): boolean => Math.abs(off) <= allowed + DUST

/**
 * Holds an answer against the engine's figures.
 * @param edgeMm the engine's edge at the drawn places; needed for an edge alone
 */
export const markOf = (ask: Ask, answer: Answer, values: LessonValues, edgeMm: readonly number[] | null): Mark => {
  const nothing: Mark = { right: false, off: null, is: null }
  if (ask.kind === 'choose' && answer.kind === 'choose') {
    const [is = null] = rightChoices(ask, values)
    return { right: is !== null && answer.choice === is, off: null, is }
  }
  if (ask.kind === 'predict' && answer.kind === 'predict') {
    const is = numberOf(values, ask.figure)
    if (is === null) return nothing
    const off = answer.value - is
    return { right: within(off, Math.max(ask.within, ask.share * Math.abs(is), alike(values, ask.figure))), off, is }
  }
  if (ask.kind === 'reach' && answer.kind === 'reach') {
    const [now, is] = [numberOf(values, ask.figure), numberOf(values, ask.target)]
    if (now === null || is === null) return nothing
    return { right: within(now - is, Math.max(ask.within, alike(values, ask.figure))), off: now - is, is }
  }
  if (ask.kind === 'draw' && answer.kind === 'draw' && edgeMm !== null) {
    const came = fromForemost(edgeMm)
    const off = fromForemost(answer.behindMm).reduce((most, v, i) => {
      const each = v - (came[i] ?? 0)
      return Math.abs(each) > Math.abs(most) ? each : most
    }, 0)
    return { right: within(off, ask.within), off, is: null }
  }
  return nothing
}

/**
 * A problem told as a value: what is wrong (`code`, a key of the text catalogue under `problem.`),
 * where (`path`, dotted, as in the job file; empty for the whole input) and the figures its sentence needs.
 */
export interface Problem {
  readonly code: string
  readonly path: string
  readonly params: Readonly<Record<string, string | number>>
}

/** Either the value, or one problem or more; never both, never an exception. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** The value, found. */
export const ok = <T>(value: T): Result<T> => ({ ok: true, value })

/** One problem, at a place. */
export const problem = (code: string, path = '', params: Problem['params'] = {}): Problem => ({
  code,
  path,
  params,
})

/** A failed result. @param problems at least one */
export const failed = (
  ...problems: readonly Problem[]
): { readonly ok: false; readonly problems: readonly Problem[] } => ({
  ok: false,
  problems,
})

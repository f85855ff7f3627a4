import type { z } from 'zod'
import { type Problem, problem } from './result.ts'

type Issue = z.core.$ZodIssue

const dotted = (path: readonly PropertyKey[]): string => path.map(String).join('.')

/** What stands at a path of the input; undefined where nothing does. */
const valueAt = (input: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (at, key) => (typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>)[key] : undefined),
    input,
  )

/** Too little: a figure, an empty text (which is a missing one) or a list. */
const tooSmall = (issue: Extract<Issue, { code: 'too_small' }>, path: string): Problem => {
  if (issue.origin === 'string') return problem('missing', path)
  if (issue.origin === 'array') return problem('tooFew', path, { least: Number(issue.minimum) })
  return problem('tooSmall', path, { min: Number(issue.minimum) })
}

const tooBig = (issue: Extract<Issue, { code: 'too_big' }>, path: string): Problem => {
  if (issue.origin === 'string') return problem('tooLong', path, { most: Number(issue.maximum) })
  if (issue.origin === 'array') return problem('tooMany', path, { most: Number(issue.maximum) })
  return problem('tooLarge', path, { max: Number(issue.maximum) })
}

const wrongType = (expected: string, path: string): Problem => {
  if (expected === 'int') return problem('notWhole', path)
  if (expected === 'null') return problem('mustBeEmpty', path)
  return problem('wrongType', path, { expected })
}

const problemsOfIssue = (issue: Issue, input: unknown): Problem[] => {
  const path = dotted(issue.path)
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => problem('unknownField', dotted([...issue.path, key]), { key }))
  if (valueAt(input, issue.path) === undefined) return [problem('missing', path)]
  if (issue.code === 'invalid_type') return [wrongType(issue.expected, path)]
  if (issue.code === 'invalid_value')
    return [problem('notOneOf', path, { options: issue.values.map(String).join(', ') })]
  if (issue.code === 'too_small') return [tooSmall(issue, path)]
  if (issue.code === 'too_big') return [tooBig(issue, path)]
  if (issue.code === 'custom' && typeof issue.params?.code === 'string') return [problem(issue.params.code, path)]
  return [problem('invalid', path)]
}

/**
 * A schema's refusal in the program's own codes, one problem a field.
 *
 * @param input what was refused, so that a field left out is told from one filled in wrongly
 */
export const problemsOf = (error: z.ZodError, input: unknown): Problem[] =>
  error.issues.flatMap((issue) => problemsOfIssue(issue, input))

import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { problem } from '../../geometry/result.ts'
import { problemsOf } from '../../geometry/zodProblems.ts'

const schema = z.strictObject({
  width: z.number().min(3).max(120).optional(),
  side: z.enum(['up', 'down']).optional(),
  sweeps: z.int().optional(),
  points: z.array(z.number()).min(2).max(3).optional(),
  swing: z.null().optional(),
  name: z.string().min(1).max(4).optional(),
  id: z.uuid().optional(),
  inner: z.strictObject({ needed: z.number().nullable() }).optional(),
})

const refusal = (input: unknown) => {
  const result = schema.safeParse(input)
  return result.success ? [] : problemsOf(result.error, input)
}

describe('problems of a schema', () => {
  it.each([
    [{ width: 2 }, problem('tooSmall', 'width', { min: 3 })],
    [{ width: 121 }, problem('tooLarge', 'width', { max: 120 })],
    [{ width: 'wide' }, problem('wrongType', 'width', { expected: 'number' })],
    [{ width: null }, problem('wrongType', 'width', { expected: 'number' })],
    [{ side: 'left' }, problem('notOneOf', 'side', { options: 'up, down' })],
    [{ sweeps: 1.5 }, problem('notWhole', 'sweeps')],
    [{ points: [1] }, problem('tooFew', 'points', { least: 2 })],
    [{ points: [1, 2, 3, 4] }, problem('tooMany', 'points', { most: 3 })],
    [{ points: [1, 'x'] }, problem('wrongType', 'points.1', { expected: 'number' })],
    [{ swing: 3 }, problem('mustBeEmpty', 'swing')],
    [{ name: '' }, problem('missing', 'name')],
    [{ name: 'fives' }, problem('tooLong', 'name', { most: 4 })],
    [{ id: 'x' }, problem('invalid', 'id')],
    [{ inner: {} }, problem('missing', 'inner.needed')],
    [{ inner: { needed: null, odd: 1 } }, problem('unknownField', 'inner.odd', { key: 'odd' })],
    [undefined, problem('missing')],
    [[], problem('wrongType', '', { expected: 'object' })],
  ])('%j', (input, expected) => {
    expect(refusal(input)).toEqual([expected])
  })

  it('names every field that is wrong', () => {
    expect(refusal({ width: 1, side: 'x', a: 1, b: 2 }).map(({ path }) => path)).toEqual(['width', 'side', 'a', 'b'])
  })
})

import { ok, type Result } from '../../geometry/result.ts'

/** Does the same to each of several tools, once; the first that cannot be ends it, and nothing is kept. @returns what came of each */
export const toEach = async <T>(
  ids: readonly string[],
  work: (id: string) => Promise<Result<T>>,
): Promise<Result<T[]>> => {
  const done: T[] = []
  for (const id of new Set(ids)) {
    const one = await work(id)
    if (!one.ok) return one
    done.push(one.value)
  }
  return ok(done)
}

import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { FoundByCode } from '../../main/contract/labels.ts'
import { call } from '../app/transport.ts'

/** @param text a code as typed, or a mark as read. @returns what it stands for, where that still stands */
export const findCode = async (text: string): Promise<Result<FoundByCode>> => {
  const answer = await call('code.find', { code: text })
  if (!answer.ok) return answer
  const found = answer.value
  if (found === null) return failed(problem('codeUnknown', '', { code: text.trim() }))
  if (found.removed) return failed(problem('codeRemoved', '', { code: found.code, name: found.name }))
  return ok(found)
}

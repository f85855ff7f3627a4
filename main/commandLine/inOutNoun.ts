import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { type InOutNoun, inOutNouns } from '../contract/inOut.ts'

/** @param text of `--noun`. @returns the kind of thing; null where none is named */
export const nounOf = (text: string | undefined): Result<InOutNoun | null> => {
  if (text === undefined) return ok(null)
  const noun = inOutNouns.find((each) => each === text)
  return noun ? ok(noun) : failed(problem('rackNoun', '--noun', { text, nouns: inOutNouns.join(', ') }))
}

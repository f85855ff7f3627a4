import type { TFunction } from 'i18next'
import type { Result } from '../../geometry/result.ts'
import type { CallContext } from '../services.ts'
import { type CommandEnd, done, refusedFor } from './commandEnd.ts'
import type { Answered } from './openRack.ts'
import { reasonLines } from './reasonLines.ts'

/** Nobody watches how far a command is, and no window is to be told. */
export const unwatched = (): CallContext => ({
  signal: new AbortController().signal,
  progress: () => undefined,
  changed: () => undefined,
  offered: () => undefined,
})

/** How work with a rack ended, with what should be heard of the rack beside it. */
export const endOf = <T>(t: TFunction, result: Result<Answered<T>>, said: (value: T) => CommandEnd): CommandEnd => {
  if (!result.ok) return refusedFor(t, result.problems)
  const { value, notices } = result.value
  const end = said(value)
  return { ...end, errors: `${end.errors}${done('', reasonLines(t, notices)).errors}` }
}

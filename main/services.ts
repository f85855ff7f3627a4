import type { z } from 'zod'
import type { Result } from '../geometry/result.ts'
import type { CallName, calls } from './contract/calls.ts'
import type { Topic } from './contract/events.ts'

/** What a call can tell while it runs, and how it learns that nobody waits any more. */
export interface CallContext {
  readonly signal: AbortSignal
  /** @param done 0 to 1 */
  progress(done: number): void
  /** Tells every client that records of a noun are not as they were; no ids: any of them. */
  /** Tells every client that a file waits to be taken. */
  offered(): void
  changed(noun: Topic, ids: readonly string[]): void
}

/** A call's work, behind the door: its input is already validated, defaults filled in. */
export type Service<N extends CallName> = (
  input: z.output<(typeof calls)[N]['input']>,
  context: CallContext,
) => Promise<Result<z.output<(typeof calls)[N]['output']>>>

/** The work of every call in the contract, no more and no fewer. */
export type Services = { readonly [N in CallName]: Service<N> }

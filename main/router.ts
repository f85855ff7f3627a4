import { failed, ok, problem, type Result } from '../geometry/result.ts'
import { problemsOf } from '../geometry/zodProblems.ts'
import { type CallName, calls } from './contract/calls.ts'
import type { HostEvent } from './contract/events.ts'
import { faultOf, UNREADABLE } from './database/fault.ts'
import type { CallContext, Services } from './services.ts'

/** The one door to the services, the same behind every host. */
export interface Router {
  /** @param emit takes what the call tells of while it runs, and what it changed */
  handle(name: string, input: unknown, callId: string, emit: (event: HostEvent) => void): Promise<Result<unknown>>
  /** Asks the running calls of this id to stop; an unknown id is ignored. */
  cancel(callId: string): void
}

interface RouterOptions {
  /** Told of what should not have happened; the caller only hears that it did. */
  onFault(error: unknown): void
  /** Whether all data reads as it should; asked where something did not, to tell damage from a fault of the program. */
  readsThrough(): Promise<boolean>
}

const isCallName = (name: string): name is CallName => Object.hasOwn(calls, name)

const contextOf = (callId: string, signal: AbortSignal, emit: (event: HostEvent) => void): CallContext => ({
  signal,
  progress: (done) => emit({ type: 'progress', callId, done }),
  changed: (noun, ids) => emit({ type: 'changed', noun, ids: [...ids] }),
  offered: () => emit({ type: 'offered' }),
})

/** Runs one call: its input by the contract, its work, its output by the contract. */
const run = async (
  services: Services,
  name: CallName,
  input: unknown,
  context: CallContext,
): Promise<Result<unknown>> => {
  const parsed = calls[name].input.safeParse(input)
  if (!parsed.success) return failed(...problemsOf(parsed.error, input))
  const service = services[name] as (input: unknown, context: CallContext) => Promise<Result<unknown>>
  const result = await service(parsed.data, context)
  return result.ok ? ok(calls[name].output.parse(result.value)) : result
}

/**
 * Refuses what the contract does not name, validates both ways, and turns whatever goes wrong into a problem: a call is
 * always answered and never throws.
 */
export const createRouter = (services: Services, { onFault, readsThrough }: RouterOptions): Router => {
  const running = new Set<{ readonly callId: string; readonly stop: AbortController }>()
  return {
    handle: async (name, input, callId, emit) => {
      if (!isCallName(name)) return failed(problem('unknownCall', '', { name: String(name).slice(0, 60) }))
      const entry = { callId, stop: new AbortController() }
      running.add(entry)
      try {
        return await run(services, name, input, contextOf(callId, entry.stop.signal, emit))
      } catch (error) {
        onFault(error)
        const fault = faultOf(error)
        return failed(fault.code === UNREADABLE && (await readsThrough()) ? problem('serviceFailed') : fault)
      } finally {
        running.delete(entry)
      }
    },
    cancel: (callId) => {
      for (const entry of running) if (entry.callId === callId) entry.stop.abort()
    },
  }
}

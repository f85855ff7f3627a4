import { ok, type Result } from '../../geometry/result.ts'
import type { CallInput, CallName, CallOutput } from '../../main/contract/calls.ts'
import type { Noun, Settings } from '../../main/contract/entities.ts'
import { loadAll, reread } from './readRack.ts'
import { say, sayProblem, useApp } from './store.ts'
import { call } from './transport.ts'

/** Which version of which record an edit was made on. */
export interface Seen {
  readonly id: string
  readonly version: number
}

type Changed = { readonly value: unknown; readonly changeId: number }

/** Makes a change, says it with its undo, and reads the list again. */
export const change = async <N extends CallName>(
  name: N,
  input: CallInput<N>,
  label: string,
): Promise<Result<CallOutput<N>>> => {
  const [noun, action] = name.split('.') as [Noun, string]
  const made = await call(name, input)
  if (!made.ok) return made
  say(`common:message.${noun}.${action}`, { label }, (made.value as Changed).changeId)
  await reread(noun)
  return made
}

/** Makes a change of many tools, says it with its undo, and reads the list again. @param key says how many, as `count` */
export const changeMany = async <N extends 'tools.edit' | 'tools.remove' | 'loan.lend'>(
  name: N,
  input: CallInput<N>,
  key: string,
  count: (value: CallOutput<N>['value']) => number,
): Promise<Result<CallOutput<N>>> => {
  const made = await call(name, input)
  if (!made.ok) return made
  // Where all were so already there is nothing to take back.
  say(key, { count: count(made.value.value) }, made.value.changeId || null)
  await reread('tool')
  return made
}

/** Takes back the change of this id, or the newest that stands. */
export const undo = async (id?: number): Promise<void> => {
  const undone = await call('change.undo', id === undefined ? {} : { id })
  if (!undone.ok) return undone.problems[0] && sayProblem(undone.problems[0])
  const { noun, action, label } = undone.value
  say(`common:message.undone.${action}`, { label, noun })
  await reread(noun)
}

/** Changes the unit or the theme. */
export const saveSettings = async (patch: Partial<Settings>): Promise<void> => {
  const before = useApp.getState().settings
  const wanted = { ...before, ...patch }
  // Shown at once, so that what is set next is set on top of it.
  useApp.setState({ settings: wanted })
  const saved = await call('settings.edit', wanted)
  if (saved.ok) return
  if (useApp.getState().settings === wanted) useApp.setState({ settings: before })
  if (saved.problems[0]) sayProblem(saved.problems[0])
}

/** Opens the user's own rack, or the demo again. */
export const openWorkshop = async (rack: 'demo' | 'own'): Promise<Result<null>> => {
  const opened = await call('workshop.open', { rack })
  if (!opened.ok) return opened
  await loadAll()
  say(`common:message.workshop.${rack}`)
  return ok(null)
}

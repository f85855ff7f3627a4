import { ok, type Result } from '../../geometry/result.ts'
import type { CallInput, CallName, CallOutput } from '../../main/contract/calls.ts'
import type { Noun, Settings } from '../../main/contract/entities.ts'
import { speakInWindow } from '../ui/texts.tsx'
import { loadAll, reread } from './readRack.ts'
import { say, sayProblem, useApp } from './store.ts'
import { call, transport } from './transport.ts'

/** Which version of which record an edit was made on. */
export interface Seen {
  readonly id: string
  readonly version: number
}

type Changed = { readonly value: unknown; readonly changeId: number }

/** What the status line says of a change: a key of the catalogue and its figures. */
type Told = readonly [key: string, params: Parameters<typeof say>[1]]

type Command = { [N in CallName]: CallOutput<N> extends Changed ? N : never }[CallName]

/**
 * Makes a change, says it with its undo, and reads again what it touched.
 *
 * @param tell what is said, by what came of it
 * @param callId by which a long one is watched and stopped
 */
export const changeTold = async <N extends Command>(
  name: N,
  input: CallInput<N>,
  tell: (made: CallOutput<N>) => Told,
  callId: string = crypto.randomUUID(),
): Promise<Result<CallOutput<N>>> => {
  const made = await transport.call(name, input, callId)
  if (!made.ok) return made
  // Where all was so already there is nothing to take back.
  say(...tell(made.value), (made.value as Changed).changeId || null)
  const [noun] = name.split('.') as [Noun | 'tools']
  await reread(noun === 'tools' ? 'tool' : noun)
  return made
}

/** As `changeTold`, in the words that every change of a noun has. @param label of the record */
export const change = <N extends Command>(name: N, input: CallInput<N>, label: string) =>
  changeTold(name, input, () => [`common:message.${name}`, { label }])

/** Takes back the change of this id, or the newest that stands. */
export const undo = async (id?: number): Promise<void> => {
  const undone = await call('change.undo', id === undefined ? {} : { id })
  if (!undone.ok) return undone.problems[0] && sayProblem(undone.problems[0])
  const { noun, label } = undone.value
  useApp.setState({
    message: { key: 'common:message.undone', params: {}, record: { noun, label }, changeId: null, file: null },
  })
  await reread(noun)
}

/** Changes the unit or the theme. */
export const saveSettings = async (patch: Partial<Settings>): Promise<void> => {
  const before = useApp.getState().settings
  const wanted = { ...before, ...patch }
  if (wanted.language !== before.language) await speakInWindow(wanted.language)
  // Shown at once, so that what is set next is set on top of it.
  useApp.setState({ settings: wanted })
  const saved = await call('settings.edit', wanted)
  if (saved.ok) return
  await speakInWindow(before.language)
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

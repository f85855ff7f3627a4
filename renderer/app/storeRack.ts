import { ok, problem, type Result } from '../../geometry/result.ts'
import type { CallInput, CallName, CallOutput } from '../../main/contract/calls.ts'
import type { Noun, Settings, Station, Tool, ToolDraft } from '../../main/contract/entities.ts'
import type { HostEvent } from '../../main/contract/events.ts'
import type { Photo, ToolTemplate } from '../../main/contract/extras.ts'
import type { Person } from '../../main/contract/people.ts'
import type { SmallerPicture } from '../rack/photos/smaller.ts'
import { hearProgress } from './progress.ts'
import { type App, say, sayProblem, useApp } from './store.ts'
import { refreshJob } from './storeJob.ts'
import { call, transport } from './transport.ts'

/** Which version of which record an edit was made on. */
export interface Seen {
  readonly id: string
  readonly version: number
}

const listCalls = {
  station: 'station.list',
  fixture: 'fixture.list',
  place: 'place.list',
  person: 'person.list',
  purpose: 'purpose.list',
  ownField: 'ownField.list',
} as const
const listKeys = {
  station: 'stations',
  fixture: 'fixtures',
  place: 'places',
  person: 'people',
  purpose: 'purposes',
  ownField: 'ownFields',
} as const satisfies Record<keyof typeof listCalls, keyof App>

const loadList = async (noun: keyof typeof listCalls): Promise<void> => {
  const listed = await call(listCalls[noun], {})
  if (!listed.ok) return useApp.setState({ trouble: listed.problems[0] ?? null })
  useApp.setState({ [listKeys[noun]]: listed.value, trouble: null })
}

const loadSettings = async (): Promise<void> => {
  const settings = await call('settings.get', {})
  if (settings.ok) useApp.setState({ settings: settings.value })
}

const loadWorkshop = async (): Promise<void> => {
  const workshop = await call('workshop.get', {})
  if (workshop.ok) useApp.setState({ workshop: workshop.value })
}

const renewRack = (): void => useApp.setState(({ rackChanges }) => ({ rackChanges: rackChanges + 1 }))

const renewPhotos = (): void => useApp.setState(({ photoChanges }) => ({ photoChanges: photoChanges + 1 }))

const renewDressings = (): void => useApp.setState(({ dressingChanges }) => ({ dressingChanges: dressingChanges + 1 }))

const renewDay = (): void => useApp.setState(({ dayChanges }) => ({ dayChanges: dayChanges + 1 }))

const renewLog = (): void => useApp.setState(({ logChanges }) => ({ logChanges: logChanges + 1 }))

/** Reads everything the window shows, anew. */
export const loadAll = async (): Promise<void> => {
  const lists = (['station', 'fixture', 'place', 'person', 'purpose', 'ownField'] as const).map(loadList)
  await Promise.all([loadSettings(), loadWorkshop(), ...lists])
  await loadTools()
  renewLog()
  useApp.setState({ ready: true })
}

const readTools = async (): Promise<void> => {
  const [found, standing] = await Promise.all([call('tool.find', {}), call('tool.standing', {})])
  if (!found.ok) return useApp.setState({ trouble: found.problems[0] ?? null })
  useApp.setState({ tools: found.value.tools, trouble: null })
  renewRack()
  if (standing.ok) useApp.setState({ standing: standing.value })
  await refreshJob()
}

/** @returns the work, done once more where it was asked for while it was being done: many changes at once are read once */
const onceMore = (work: () => Promise<void>): (() => Promise<void>) => {
  let running: Promise<void> | null = null
  let next: Promise<void> | null = null
  const run = (): Promise<void> => {
    running = work().finally(() => {
      running = null
    })
    return running
  }
  return () => {
    if (!running) return run()
    next ??= running.then(() => {
      next = null
      return run()
    })
    return next
  }
}
const loadTools = onceMore(readTools)

/** A list that the list of tools tells of as well. */
const withTools = (noun: keyof typeof listCalls) => async (): Promise<void> => {
  await loadList(noun)
  await loadTools()
}

/** A list that the job in hand rests on. */
const withJob = (noun: keyof typeof listCalls) => async (): Promise<void> => {
  await loadList(noun)
  await refreshJob()
}

const loadStations = withJob('station')

const loaders: Partial<Record<Noun, () => Promise<void>>> = {
  tool: loadTools,
  place: withTools('place'),
  person: withTools('person'),
  purpose: () => loadList('purpose'),
  ownField: () => loadList('ownField'),
  keptFilter: async () => renewRack(),
  photo: async () => renewPhotos(),
  dressing: async () => {
    renewDressings()
    await loadStations()
  },
  loan: loadTools,
  queueEntry: async () => renewDay(),
  stocktake: async () => renewDay(),
  happening: loadTools,
  sighting: async () => {
    renewDay()
    await loadTools()
  },
  station: loadStations,
  fixture: withJob('fixture'),
  settings: loadSettings,
  job: refreshJob,
  benchLog: () => {
    renewLog()
    // It says when a tool was last ground; and what a fixture learnt from it corrects the job, which is read with the tools.
    return loadTools()
  },
}

/** Reads again what another window, the command line or an undo changed. */
export const hear = (event: HostEvent): void => {
  hearProgress(event)
  if (event.type === 'changed') void loaders[event.noun]?.()
  if (event.type === 'unwritten') sayProblem(problem('unwritable', '', { file: event.file }))
}

type Command = Noun
type Changed = { readonly value: unknown; readonly changeId: number }

/** Makes a change, says it with its undo, and reads the list again. */
export const change = async <N extends CallName>(
  name: N,
  input: CallInput<N>,
  label: string,
): Promise<Result<CallOutput<N>>> => {
  const [noun, action] = name.split('.') as [Command, string]
  const made = await call(name, input)
  if (!made.ok) return made
  say(`common:message.${noun}.${action}`, { label }, (made.value as Changed).changeId)
  await loaders[noun]?.()
  return made
}

/** Adds a tool, or edits it where `seen` says which. */
export const saveTool = (seen: Seen | null, draft: ToolDraft): Promise<Result<{ readonly value: Tool }>> =>
  seen
    ? change('tool.edit', { id: seen.id, version: seen.version, draft }, draft.name)
    : change('tool.add', draft, draft.name)

/** Puts a tool in the scrap box. */
export const removeTool = ({ id, version, name }: Tool) => change('tool.remove', { id, version }, name)

/** Nouns whose records are written on a sheet of their own. */
type Written = 'station' | 'fixture' | 'place' | 'person' | 'purpose' | 'ownField'

/** Adds a record, or edits it where `seen` says which. */
export const saveRecord = <N extends Written>(
  noun: N,
  seen: Seen | null,
  draft: CallInput<`${N}.add`>,
): Promise<Result<unknown>> =>
  seen
    ? change<`${Written}.edit`>(
        `${noun}.edit`,
        { id: seen.id, version: seen.version, draft } as CallInput<`${Written}.edit`>,
        draft.name,
      )
    : change<`${Written}.add`>(`${noun}.add`, draft as CallInput<`${Written}.add`>, draft.name)

/** @returns the id of the purpose of this name, which is put among the workshop's where it has none of it */
export const purposeNamed = async (name: string): Promise<Result<string>> => {
  const known = useApp.getState().purposes.find((each) => each.name.toLowerCase() === name.trim().toLowerCase())
  if (known) return ok(known.id)
  const made = await change('purpose.add', { name }, name)
  return made.ok ? ok(made.value.value.id) : made
}

/** Nouns whose records are taken away from their sheet. */
export type Removable = Exclude<Written, 'person'>

/** Puts a record in the scrap box. */
export const removeRecord = (noun: Removable, { id, version, name }: Seen & { readonly name: string }) =>
  change(`${noun}.remove`, { id, version }, name)

/** Takes somebody and the name out of everything, for good. */
export const purgePerson = async ({ id, version, code }: Person, inNotes: boolean, dropCopies: boolean) => {
  const gone = await call('person.purge', { id, version, inNotes, copies: dropCopies ? 'delete' : 'keep' })
  if (!gone.ok) return gone
  const count = gone.value.copies.length
  say(count > 0 ? 'people:goneButCopies' : 'people:gone', { code, count })
  await loadAll()
  return gone
}

/** Makes a change of many tools, says it with its undo, and reads the list again. @param key says how many, as `count` */
const changeMany = async <N extends 'tools.edit' | 'tools.remove' | 'loan.lend'>(
  name: N,
  input: CallInput<N>,
  key: string,
  count: (value: CallOutput<N>['value']) => number,
): Promise<Result<CallOutput<N>>> => {
  const made = await call(name, input)
  if (!made.ok) return made
  // Where all were so already there is nothing to take back.
  say(key, { count: count(made.value.value) }, made.value.changeId || null)
  await loadTools()
  return made
}

/** Sets the same of many tools. */
export const editMany = (which: CallInput<'tools.edit'>['which'], set: CallInput<'tools.edit'>['set']) =>
  changeMany('tools.edit', { which, set }, 'many:changed', (count) => count)

/** Puts many tools in the scrap box. */
export const removeMany = (which: CallInput<'tools.edit'>['which']) =>
  changeMany('tools.remove', { which }, 'many:removed', (count) => count)

/** Lends tools to somebody by name. @param dueBack the day they are wanted back; null: any */
export const lend = (toolIds: readonly string[], person: string, dueBack: string | null) =>
  changeMany('loan.lend', { toolIds: [...toolIds], person, dueBack }, 'many:lent', (loans) => loans.length)

/** Takes a lent tool back. */
export const giveBack = ({ id, name }: Tool) => change('loan.return', { toolIds: [id] }, name)

/** Notes that a tool was honed, dropped or nicked, now. */
export const happened = async ({ id, name }: Tool, kind: CallInput<'happening.add'>['kind']) => {
  const made = await change('happening.add', { toolId: id, kind, at: new Date().toISOString() }, name)
  // Nobody signed it here, so it is said whose name was taken.
  if (made.ok && made.value.value.who !== '')
    say('common:message.happening.addBy', { label: name, who: made.value.value.who }, made.value.changeId)
  return made
}

/** Notes that a wheel was dressed or measured; it then is what was measured. */
export const noteDressing = ({ id, name }: Station, draft: Omit<CallInput<'dressing.add'>, 'stationId'>) =>
  change('dressing.add', { ...draft, stationId: id }, name)

/** Takes a line out of a wheel's log. */
export const removeDressing = ({ id, version }: Seen, label: string) =>
  change('dressing.remove', { id, version }, label)

/** Hands a picture of a tool in. */
export const addPhoto = async ({ id, name }: Tool, { file, widthPx, heightPx }: SmallerPicture) => {
  const handed = await transport.put(file)
  return handed.ok ? change('photo.add', { toolId: id, ...handed.value, widthPx, heightPx }, name) : handed
}

/** Says what a picture shows. */
export const captionPhoto = ({ id, version }: Seen, caption: string) =>
  change('photo.edit', { id, version, caption }, caption)

/** Takes a picture away. */
export const removePhoto = ({ id, version, caption }: Photo) => change('photo.remove', { id, version }, caption)

/** Keeps a tool as a pattern for others of its kind. */
export const keepPattern = (name: string, draft: Partial<ToolDraft>) =>
  change('toolTemplate.add', { name, draft: JSON.stringify(draft) }, name)

/** Calls a pattern something else. */
export const renamePattern = ({ id, version, draft }: ToolTemplate, name: string) =>
  change('toolTemplate.edit', { id, version, draft: { name, draft } }, name)

/** Forgets a pattern; tools that began with it stay as they are. */
export const forgetPattern = ({ id, version, name }: ToolTemplate) =>
  change('toolTemplate.remove', { id, version }, name)

/** Writes a line of the bench log. */
export const addReading = (draft: CallInput<'benchLog.add'>, label: string) => change('benchLog.add', draft, label)

/** Lets a fixture learn from a line of the bench log, or not. @param label the tool it was measured on */
export const countReading = ({ id, version }: Seen, counts: 'yes' | 'no', label: string) =>
  change('benchLog.edit', { id, version, counts }, label)

/** Takes a line out of the bench log. @param label the tool it was measured on */
export const removeReading = ({ id, version }: Seen, label: string) => change('benchLog.remove', { id, version }, label)

/** Takes back the change of this id, or the newest that stands. */
export const undo = async (id?: number): Promise<void> => {
  const undone = await call('change.undo', id === undefined ? {} : { id })
  if (!undone.ok) return undone.problems[0] && sayProblem(undone.problems[0])
  const { noun, action, label } = undone.value
  say(`common:message.undone.${action}`, { label, noun })
  await loaders[noun]?.()
}

/** Changes the unit or the theme. */
export const saveSettings = async (patch: Partial<Settings>): Promise<void> => {
  const saved = await call('settings.edit', { ...useApp.getState().settings, ...patch })
  if (saved.ok) useApp.setState({ settings: saved.value.value })
  else if (saved.problems[0]) sayProblem(saved.problems[0])
}

/** Opens the user's own rack, or the demo again. */
export const openWorkshop = async (rack: 'demo' | 'own'): Promise<Result<null>> => {
  const opened = await call('workshop.open', { rack })
  if (!opened.ok) return opened
  await loadAll()
  say(`common:message.workshop.${rack}`)
  return ok(null)
}

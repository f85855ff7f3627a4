import { ok, type Result } from '../../geometry/result.ts'
import type { CallInput } from '../../main/contract/calls.ts'
import type { Station, Tool, ToolDraft } from '../../main/contract/entities.ts'
import type { Photo, ToolTemplate } from '../../main/contract/extras.ts'
import type { Person } from '../../main/contract/people.ts'
import { loadAll } from '../app/readRack.ts'
import { say, useApp } from '../app/store.ts'
import { change, changeTold, type Seen } from '../app/storeRack.ts'
import { call, transport } from '../app/transport.ts'
import type { SmallerPicture } from './photos/smaller.ts'

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

type Many = CallInput<'tools.edit'>

/** Sets the same of many tools. @param callId by which it is watched and stopped */
export const editMany = (which: Many['which'], set: Many['set'], callId: string) =>
  changeTold('tools.edit', { which, set }, ({ value: count }) => ['many:changed', { count }], callId)

/** Puts many tools in the scrap box. @param callId by which it is watched and stopped */
export const removeMany = (which: Many['which'], callId: string) =>
  changeTold('tools.remove', { which }, ({ value: count }) => ['many:removed', { count }], callId)

/** Lends tools to somebody by name. @param dueBack the day they are wanted back; null: any */
export const lend = (toolIds: readonly string[], person: string, dueBack: string | null) =>
  changeTold('loan.lend', { toolIds: [...toolIds], person, dueBack }, ({ value }) => [
    'many:lent',
    { count: value.length },
  ])

/** Takes a lent tool back. */
export const giveBack = ({ id, name }: Tool) => change('loan.return', { toolIds: [id] }, name)

/** Notes that a tool was honed, dropped or nicked, now. */
export const happened = ({ id, name: label }: Tool, kind: CallInput<'happening.add'>['kind']) =>
  changeTold('happening.add', { toolId: id, kind, at: new Date().toISOString() }, ({ value: { who } }) =>
    // Nobody signed it here, so it is said whose name was taken.
    who === '' ? ['common:message.happening.add', { label }] : ['common:message.happening.addBy', { label, who }],
  )

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

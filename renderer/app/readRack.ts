import { problem } from '../../geometry/result.ts'
import type { Noun } from '../../main/contract/entities.ts'
import type { HostEvent, Topic } from '../../main/contract/events.ts'
import { speakInWindow } from '../ui/texts.tsx'
import { hearProgress } from './progress.ts'
import { type App, say, sayProblem, useApp } from './store.ts'
import { refreshJob } from './storeJob.ts'
import { call } from './transport.ts'

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

/** Also has the window speak the workshop's language, before anything is shown in it. */
export const loadSettings = async (): Promise<void> => {
  const settings = await call('settings.get', {})
  if (!settings.ok) return
  await speakInWindow(settings.value.language)
  useApp.setState({ settings: settings.value })
}

const loadWorkshop = async (): Promise<void> => {
  const workshop = await call('workshop.get', {})
  if (workshop.ok) useApp.setState({ workshop: workshop.value })
}

type Counter = Extract<keyof App, `${string}Changes`>

/** What rests on this count is read again. */
const renew = (counter: Counter): void => useApp.setState((app) => ({ [counter]: app[counter] + 1 }))

/** Reads everything the window shows but the settings, which it begins with. */
export const loadRack = async (): Promise<void> => {
  const lists = (['station', 'fixture', 'place', 'person', 'purpose', 'ownField'] as const).map(loadList)
  await Promise.all([loadWorkshop(), ...lists])
  await loadTools()
  renew('logChanges')
  useApp.setState({ ready: true })
}

/** Reads everything the window shows, anew. */
export const loadAll = async (): Promise<void> => {
  await Promise.all([loadSettings(), loadRack()])
}

const readTools = async (): Promise<void> => {
  const [found, standing] = await Promise.all([call('tool.find', {}), call('tool.standing', {})])
  if (!found.ok) return useApp.setState({ trouble: found.problems[0] ?? null })
  useApp.setState({ tools: found.value.tools, trouble: null })
  renew('rackChanges')
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

/** What is read again when records of a noun changed. */
const loaders: Partial<Record<Topic, () => Promise<void>>> = {
  tool: loadTools,
  place: withTools('place'),
  person: withTools('person'),
  purpose: () => loadList('purpose'),
  ownField: () => loadList('ownField'),
  keptFilter: async () => renew('rackChanges'),
  photo: async () => renew('photoChanges'),
  dressing: async () => {
    renew('dressingChanges')
    await loadStations()
  },
  loan: loadTools,
  lesson: async () => renew('lessonChanges'),
  progress: async () => renew('learnerChanges'),
  queueEntry: async () => renew('dayChanges'),
  stocktake: async () => renew('dayChanges'),
  happening: loadTools,
  sighting: async () => {
    renew('dayChanges')
    await loadTools()
  },
  station: loadStations,
  fixture: withJob('fixture'),
  settings: loadSettings,
  job: refreshJob,
  benchLog: () => {
    renew('logChanges')
    // It says when a tool was last ground; and what a fixture learnt from it corrects the job, which is read with the tools.
    return loadTools()
  },
}

/** Reads again what another window, the command line or an undo changed. */
export const hear = (event: HostEvent): void => {
  hearProgress(event)
  if (event.type === 'changed') void loaders[event.noun]?.()
  if (event.type === 'classViewBack') say('teach:class.back')
  if (event.type === 'unwritten') sayProblem(problem('unwritable', '', { file: event.file }))
}

/** Reads again what records of a noun tell, once some of them changed. */
export const reread = async (noun: Noun): Promise<void> => loaders[noun]?.()

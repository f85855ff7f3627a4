import type { Job } from '../../geometry/job.ts'
import { type Problem, problem } from '../../geometry/result.ts'
import type { PlanAnswer } from '../../geometry/solveJob.ts'
import type { JobRecord, Tool } from '../../main/contract/entities.ts'
import { solver } from '../worker/solver.ts'
import { checkJob, sameJob, withPlaces } from './jobParts.ts'
import { type EditOptions, emptyHands, type JobChange, say, useApp } from './store.ts'
import { call } from './transport.ts'

/** Edits follow one another: each sees the version that the one before it made. */
let last: Promise<unknown> = Promise.resolve()
const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
  const mine = last.then(work, work)
  last = mine.catch(() => undefined)
  return mine
}

/** Takes a tool in hand; its job is opened by `openJob` when a screen needs it. */
export const takeTool = (tool: Tool): void => {
  if (useApp.getState().tool?.id === tool.id) return
  emptyHands()
  useApp.setState({ tool })
}

/** Takes the tool of a code in hand; one that is not there leaves the hands as they are. */
export const takeByCode = async (code: string): Promise<void> => {
  if (useApp.getState().tool?.code === code) return
  const found = await call('tool.one', { code })
  if (found.ok && found.value) takeTool(found.value)
}

const readJob = async (): Promise<void> => {
  const { tool } = useApp.getState()
  if (!tool) return
  const opened = await call('job.open', { toolId: tool.id })
  if (useApp.getState().tool?.id !== tool.id) return
  if (opened.ok) holdJob(opened.value)
  else useApp.setState({ problems: opened.problems, problemAt: null })
}

/** Opens the job of the tool in hand, made the first time. */
export const openJob = (): Promise<void> => inTurn(readJob)

/** Puts a job record in hand, and solves it where it changed. */
const holdJob = (record: JobRecord): void => {
  const { stations, fixtures, job, report, solving } = useApp.getState()
  const unchanged = job?.id === record.id && sameJob(job.document, record.document)
  // A document that says the same stays the same object, so that nothing that follows it begins again.
  const document = unchanged ? job.document : record.document
  if (!unchanged) useApp.setState({ trial: null })
  useApp.setState({
    job: { ...record, document },
    station: stations.find(({ id }) => id === record.stationId) ?? null,
    fixture: fixtures.find(({ id }) => id === record.fixtureId) ?? null,
  })
  if (!unchanged || (!report && !solving)) void solveHeld()
}

/** Looks at tool and job again, after records that they rest on changed. */
export const refreshJob = async (): Promise<void> => {
  const { job, tool } = useApp.getState()
  if (!tool) return
  const found = await call('tool.one', { id: tool.id })
  if (!found.ok || useApp.getState().tool?.id !== tool.id) return
  const now = found.value
  if (!now) return emptyHands()
  useApp.setState({ tool: now })
  if (job) await openJob()
}

/** Works the job in hand out, and shows what comes of it. */
export const solveHeld = async (): Promise<void> => {
  const { job } = useApp.getState()
  if (!job) return
  useApp.setState({ solving: true, answer: null, problems: [], problemAt: null })
  const checked = checkJob(job.document)
  const stillHeld = () => useApp.getState().job?.document === job.document
  const answered = (answer: PlanAnswer) => stillHeld() && useApp.setState({ answer })
  const solved = checked.ok ? await solver.solve(checked.value, answered) : checked
  if (!stillHeld()) return
  if (solved.ok) return useApp.setState({ report: solved.value, answer: null, solving: false })
  if (solved.problems[0]?.code !== 'superseded') useApp.setState({ problems: solved.problems, solving: false })
}

/** Shows why an edit was not taken. */
export const refuse = (problems: readonly Problem[], at: string | null): false => {
  useApp.setState({ problems, problemAt: at })
  return false
}

/** Forgets an edit that was not taken, once its field shows the last good figure again. */
export const forgetRefused = (): void => {
  if (useApp.getState().problemAt !== null) useApp.setState({ problems: [], problemAt: null })
}

/** As `App.editJob`. An undo or another window may have come before it: what follows from the job as it stands is then done on that. */
export const editJob = (change: JobChange, options: EditOptions = {}): Promise<boolean> =>
  inTurn(async () => {
    const done = await editOnce(change, options)
    if (done !== 'conflict') return done
    await readJob()
    if (typeof change !== 'function') return refuse([problem('conflict')], options.at ?? null)
    return (await editOnce(change, options)) === true
  })

const editOnce = async (change: JobChange, options: EditOptions): Promise<boolean | 'conflict'> => {
  const { at = null, ...places } = options
  const { job } = useApp.getState()
  if (!job) return false
  const checked = checkJob(typeof change === 'function' ? change(job.document) : change)
  if (!checked.ok) return refuse(checked.problems, at)
  if (sameJob(checked.value, job.document) && !movesPlace(job, places)) {
    forgetRefused()
    return true
  }
  return keep(job, checked.value, at, places)
}

const movesPlace = (job: JobRecord, { stationId, fixtureId }: EditOptions): boolean =>
  (stationId ?? job.stationId) !== job.stationId || (fixtureId ?? job.fixtureId) !== job.fixtureId

const keep = async (
  job: JobRecord,
  document: Job,
  at: string | null,
  places: EditOptions,
): Promise<boolean | 'conflict'> => {
  const { id, version } = job
  const saved = await call('job.edit', { id, version, document, ...places })
  if (!saved.ok) {
    return saved.problems[0]?.code === 'conflict' ? 'conflict' : refuse(saved.problems, at)
  }
  useApp.setState({ problems: [], problemAt: null })
  holdJob(saved.value.value)
  say('common:message.jobChanged', { tool: useApp.getState().tool?.name ?? '' }, saved.value.changeId)
  return true
}

/** Works at another station, or with another fixture; a record that does not fit the job is refused. */
export const moveJob = (place: { readonly stationId?: string; readonly fixtureId?: string }): Promise<boolean> => {
  const { stations, fixtures } = useApp.getState()
  const station = stations.find(({ id }) => id === place.stationId)
  const fixture = fixtures.find(({ id }) => id === place.fixtureId)
  const at = station ? 'station' : 'fixture'
  return editJob((job) => withPlaces(job, station, fixture), { ...place, at })
}

useApp.setState({ editJob })

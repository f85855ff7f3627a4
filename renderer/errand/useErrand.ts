import { create } from 'zustand'
import { failed, ok, type Problem, problem, type Result } from '../../geometry/result.ts'
import type { Errand } from '../../main/contract/errand.ts'
import type { FoundByCode } from '../../main/contract/labels.ts'
import { sayProblem } from '../app/store.ts'
import { today } from '../app/storeDay.ts'
import { call } from '../app/transport.ts'

/** What is filled in once, whatever of it the errand at hand asks for. */
export interface Filled {
  readonly does: Errand['does']
  readonly placeId: string
  readonly person: string
  /** Empty: any day. */
  readonly dueBack: string
  readonly who: string
}

/** One scan: which tool, what was done, and how it went. */
export interface Scanned {
  readonly key: number
  readonly toolId: string
  readonly code: string
  readonly name: string
  /** The errand as it was then, to tell it from a later one. */
  readonly errand: Errand
  /** 0: nothing had to be changed. */
  readonly changeId: number
  readonly problem: Problem | null
  readonly takenBack: boolean
}

interface State {
  readonly filled: Filled
  /** Newest first. */
  readonly scanned: readonly Scanned[]
}

const start: Filled = { does: 'honed', placeId: '', person: '', dueBack: '', who: '' }

/** Kept while other parts are looked at. */
export const useErrand = create<State>()(() => ({ filled: start, scanned: [] }))

export const fill = (change: Partial<Filled>): void =>
  useErrand.setState(({ filled }) => ({ filled: { ...filled, ...change } }))

export const startAnew = (): void => useErrand.setState({ scanned: [] })

/** @returns the errand as it is filled in, or what is missing */
const errandOf = ({ does, placeId, person, dueBack }: Filled): Result<Errand> => {
  if (does === 'place') return placeId === '' ? failed(problem('errandPlace')) : ok({ does, placeId })
  if (does === 'queue') return ok({ does, onDay: today() })
  if (does !== 'lend') return ok({ does })
  if (person.trim() === '') return failed(problem('errandPerson'))
  return ok({ does, person: person.trim(), dueBack: dueBack === '' ? null : dueBack })
}

const isSame = (a: Errand, b: Errand): boolean => JSON.stringify(a) === JSON.stringify(b)

const noted = (entry: Omit<Scanned, 'key' | 'takenBack'>): void =>
  useErrand.setState(({ scanned }) => ({
    scanned: [{ ...entry, key: scanned.length, takenBack: false }, ...scanned],
  }))

/** Does the errand to a tool at once; a tool that stands in the list with it is not done twice, however often it is read. */
const doTo = async ({ id: toolId, code, name }: FoundByCode): Promise<Result<null>> => {
  const { filled, scanned } = useErrand.getState()
  const errand = errandOf(filled)
  if (!errand.ok) return errand
  const before = scanned.find((each) => each.toolId === toolId && !each.takenBack && each.problem === null)
  if (before && isSame(before.errand, errand.value)) return failed(problem('errandTwice', '', { code }))
  const done = await call('tool.errand', { toolIds: [toolId], errand: errand.value, who: filled.who.trim() })
  noted({
    ...{ toolId, code, name, errand: errand.value },
    changeId: done.ok ? done.value.changeId : 0,
    problem: done.ok ? null : (done.problems[0] ?? null),
  })
  return done.ok ? ok(null) : done
}

/** Takes what was scanned: a tool's label does the errand to it, a place's says where things are put. */
export const takeScanned = async (found: FoundByCode): Promise<Result<null>> => {
  if (found.noun === 'tool') return doTo(found)
  if (found.noun !== 'place' || useErrand.getState().filled.does !== 'place')
    return failed(problem('codeNoTool', '', { code: found.code }))
  fill({ placeId: found.id })
  return ok(null)
}

/** Takes one scan back; the list keeps it, marked. */
export const takeBack = async ({ key, changeId }: Scanned): Promise<void> => {
  const undone = await call('change.undo', { id: changeId })
  if (!undone.ok) return undone.problems[0] && sayProblem(undone.problems[0])
  useErrand.setState(({ scanned }) => ({
    scanned: scanned.map((each) => (each.key === key ? { ...each, takenBack: true } : each)),
  }))
}

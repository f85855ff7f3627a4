import { create } from 'zustand'
import type { CallInput } from '../../../main/contract/calls.ts'
import type { Asked } from '../../../main/contract/finding.ts'
import { call } from '../../app/transport.ts'

/** What finds tools, whatever the order. */
export type Question = Pick<Asked, 'search' | 'filter'>

/** The same in the order of a list. */
type Listed = Question & Pick<Asked, 'sort' | 'descending'>

/** Tools chosen for something that is done to all of them. */
interface Chosen {
  /** Whether boxes to tick are shown. */
  readonly on: boolean
  /** Those named one by one. */
  readonly ids: ReadonlySet<string>
  /** All that these words and conditions find, but for `except`; null: only those named. */
  readonly all: (Question & { readonly total: number }) | null
  readonly except: ReadonlySet<string>
}

const NONE: Chosen = { on: false, ids: new Set(), all: null, except: new Set() }

export const useChosen = create<Chosen>()(() => NONE)

export const letGo = (): void => useChosen.setState(NONE)

export const beginChoosing = (): void => useChosen.setState({ on: true })

const toggled = (set: ReadonlySet<string>, id: string): ReadonlySet<string> => {
  const next = new Set(set)
  if (!next.delete(id)) next.add(id)
  return next
}

/** Chooses a tool, or lets it go. */
export const toggleChosen = (id: string): void =>
  useChosen.setState(({ all, ids, except }) =>
    all ? { on: true, except: toggled(except, id) } : { on: true, ids: toggled(ids, id) },
  )

/** Chooses these as well. */
export const choose = (more: readonly string[]): void =>
  useChosen.setState(({ all, ids, except }) =>
    all
      ? { except: new Set([...except].filter((id) => !more.includes(id))) }
      : { on: true, ids: new Set([...ids, ...more]) },
  )

/** Chooses all that are found, seen or not. */
export const chooseAll = (question: Question, total: number): void =>
  useChosen.setState({ ...NONE, on: true, all: { ...question, total } })

export const isChosen = ({ all, ids, except }: Chosen, id: string): boolean => (all ? !except.has(id) : ids.has(id))

export const countChosen = ({ all, ids, except }: Chosen): number => (all ? all.total - except.size : ids.size)

/** @returns the chosen ones as the host is told of them */
export const whichChosen = ({ all, ids, except }: Chosen): CallInput<'tools.look'>['which'] =>
  all ? { search: all.search, filter: all.filter, except: [...except] } : { ids: [...ids] }

/** Says how many are found in all: a list counts only so far. */
export const foundInAll = (total: number): void =>
  useChosen.setState(({ all }) => (all ? { all: { ...all, total } } : {}))

/** Tools in one answer. */
const PAGE = 500

/** @returns the ids of the rows of a list from one to another, both in it, whatever of it was read so far */
export const idsOfRows = async (asked: Listed, first: number, last: number): Promise<readonly string[]> => {
  const found: string[] = []
  for (let offset = first; offset <= last; offset += PAGE) {
    const page = await call('tool.find', { ...asked, offset, limit: Math.min(PAGE, last - offset + 1) })
    if (!page.ok || page.value.tools.length === 0) break
    found.push(...page.value.tools.map(({ id }) => id))
  }
  return found
}

/** @returns the ids of the chosen ones, as many as there are up to `most` */
export const idsChosen = async (chosen: Chosen, most: number): Promise<readonly string[]> => {
  const { all, ids, except } = chosen
  if (!all) return [...ids].slice(0, most)
  const listed = { search: all.search, filter: all.filter, sort: 'code', descending: false } as const
  const rows = Math.min(all.total, most + except.size)
  const found = await idsOfRows(listed, 0, rows - 1)
  return found.filter((id) => !except.has(id)).slice(0, most)
}

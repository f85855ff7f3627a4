import { create } from 'zustand'
import type { Filter, SortColumn } from '../../main/contract/finding.ts'

/** What is asked of the rack; kept while other screens are open, and written to by a scan of a place. */
export interface Finding {
  readonly typed: string
  readonly filter: Filter
  readonly sort: SortColumn
  readonly descending: boolean
}

export const everything: Finding = { typed: '', filter: {}, sort: 'code', descending: false }

export const useFinding = create<Finding>()(() => everything)

export const findTyped = (typed: string): void => useFinding.setState({ typed })

/** Sets conditions, or takes them away where they are undefined; the others stay. */
export const narrow = (change: Partial<Filter>): void =>
  useFinding.setState(({ filter }) => {
    const entries = Object.entries({ ...filter, ...change }).filter(([, value]) => value !== undefined)
    return { filter: Object.fromEntries(entries) as Filter }
  })

/** Sorts by a column; by the one it is sorted by already, the other way round. */
export const sortBy = (column: SortColumn): void =>
  useFinding.setState(({ sort, descending }) => ({ sort: column, descending: sort === column && !descending }))

import { useCallback, useEffect, useRef, useState } from 'react'
import type { ToolLine } from '../../main/contract/entities.ts'
import type { Asked } from '../../main/contract/finding.ts'
import { useApp } from '../app/store.ts'
import { call } from '../app/transport.ts'

/** Tools in one answer: more than a window full, so that a turn of the wheel rarely waits. */
const PAGE = 50

type Question = Pick<Asked, 'search' | 'filter' | 'sort' | 'descending'>

/** What was found so far, by row; a row that nobody looked at yet is not there. */
export interface Rows {
  readonly total: number
  /** There are more than are counted. */
  readonly more: boolean
  readonly at: ReadonlyMap<number, ToolLine>
  /** The question that they answer; those of another are let go with its first answer. */
  readonly wanted: string
}

/** Rows of these pages alone; the same rows, which are then not drawn again, where there are no others. */
const onPages = (rows: Rows, pages: ReadonlySet<number>): Rows => {
  const at = new Map([...rows.at].filter(([row]) => pages.has(Math.floor(row / PAGE))))
  return at.size === rows.at.size ? rows : { ...rows, at }
}

/** The tools that are asked for, read page by page as they come into sight. */
export interface FoundTools {
  /** Null: not answered yet. */
  readonly rows: Rows | null
  /** Sees to it that these rows are there. */
  see(first: number, last: number): void
}

const pagesOf = (first: number, last: number): readonly number[] => {
  const from = Math.floor(first / PAGE)
  return Array.from({ length: Math.floor(last / PAGE) - from + 1 }, (_, k) => from + k)
}

/** @returns what is found, found again after every change of the rack; what was shown stays until the answer is there */
export const useFound = (question: Question): FoundTools => {
  const [rows, setRows] = useState<Rows | null>(null)
  const changes = useApp((app) => app.rackChanges)
  const ready = useApp((app) => app.ready)
  const asking = useRef({ turn: 0, pages: new Set<number>(), seen: [0] as readonly number[], wanted: '' })
  const wanted = JSON.stringify(question)
  const read = useCallback(async (page: number) => {
    const { turn, pages, wanted } = asking.current
    pages.add(page)
    const asked = { ...(JSON.parse(wanted) as Question), offset: page * PAGE, limit: PAGE }
    const found = await call('tool.find', asked)
    if (!found.ok || asking.current.turn !== turn) return
    const { tools, total, more } = found.value
    setRows((before) => {
      const at = new Map(before?.wanted === wanted ? before.at : [])
      tools.forEach((tool, i) => {
        at.set(page * PAGE + i, tool)
      })
      return { total, more, at, wanted }
    })
  }, [])
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change of the rack is the trigger
  useEffect(() => {
    if (!ready) return
    const turn = asking.current.turn + 1
    const seen = asking.current.wanted === wanted ? asking.current.seen : [0]
    asking.current = { turn, pages: new Set(), seen, wanted }
    // What was shown stays while it is read again, so that a row keeps the focus; what is not read again goes.
    void Promise.all(seen.map(read)).then(() => {
      const { turn: now, pages } = asking.current
      if (now === turn) setRows((rows) => rows && onPages(rows, pages))
    })
  }, [read, wanted, changes, ready])
  const see = useCallback(
    (first: number, last: number) => {
      const seen = pagesOf(Math.max(first, 0), Math.max(last, 0))
      asking.current.seen = seen
      for (const page of seen) if (!asking.current.pages.has(page)) void read(page)
    },
    [read],
  )
  return { rows, see }
}

import { type KeyboardEvent, type MouseEvent, useEffect, useRef } from 'react'
import type { Tool } from '../../../main/contract/entities.ts'
import { useFinding } from '../finding.ts'
import type { Rows } from '../useFound.ts'
import { choose, chooseAll, idsOfRows, isChosen, letGo, toggleChosen, useChosen } from './chosen.ts'

interface Choosing {
  /** Whether boxes to tick are shown. */
  readonly on: boolean
  isChosen(id: string): boolean
  /** @returns whether the key chose something, and is not to do anything else */
  key(event: KeyboardEvent, row: number): boolean
  /** @returns whether the click chose something */
  click(event: MouseEvent, row: number): boolean
}

/** What is asked of the rack now; nothing here is drawn by it. */
const asked = () => {
  const { typed: search, ...others } = useFinding.getState()
  return { search, ...others }
}

/** Keys that go on with choosing when Shift is held, and how far. */
const steps: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1 }

/** Choosing several rows of a list: Space one, Shift and arrows a run of them, Ctrl+A all, Escape none; by mouse with Ctrl or Shift. */
export const useChoosing = (rows: Rows): Choosing => {
  const chosen = useChosen()
  /** The row that a run begins at. */
  const anchor = useRef<number | null>(null)
  // All that were found is not all that is found now.
  useEffect(
    () =>
      useFinding.subscribe((now, before) => {
        const isOther = now.typed !== before.typed || now.filter !== before.filter
        if (isOther && useChosen.getState().all) letGo()
      }),
    [],
  )
  const idAt = (row: number): string | undefined => (rows.at.get(row) as Tool | undefined)?.id
  const toggle = (row: number): boolean => {
    const id = idAt(row)
    if (id === undefined) return false
    anchor.current = row
    toggleChosen(id)
    return true
  }
  const run = (from: number, to: number): void => {
    const [first, last] = [Math.max(Math.min(from, to), 0), Math.min(Math.max(from, to), rows.total - 1)]
    const ids = Array.from({ length: last - first + 1 }, (_, k) => idAt(first + k))
    const known = ids.filter((id) => id !== undefined)
    choose(known)
    // Rows between that were never in sight were not read yet.
    if (known.length < ids.length) void idsOfRows(asked(), first, last).then(choose)
  }
  const key = (event: KeyboardEvent, row: number): boolean => {
    if (event.key === ' ') {
      event.preventDefault()
      return toggle(row)
    }
    if (event.key === 'a' && (event.ctrlKey || event.metaKey)) {
      event.preventDefault()
      const { search, filter } = asked()
      chooseAll({ search, filter }, rows.total)
      return true
    }
    if (event.key === 'Escape' && chosen.on) {
      letGo()
      return true
    }
    const step = steps[event.key]
    // The arrow goes on to the next row as well.
    if (event.shiftKey && step !== undefined) run(row, row + step)
    return false
  }
  const click = (event: MouseEvent, row: number): boolean => {
    if (event.shiftKey) {
      run(anchor.current ?? row, row)
      return true
    }
    return (chosen.on || event.ctrlKey || event.metaKey) && toggle(row)
  }
  return { on: chosen.on, isChosen: (id) => isChosen(chosen, id), key, click }
}

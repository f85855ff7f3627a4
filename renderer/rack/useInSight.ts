import { type RefObject, useCallback, useEffect, useRef, useState } from 'react'
import type { FoundTools, Rows } from './useFound.ts'

/** Lists up to this long are shown whole, and rows may be as high as their words; longer ones show what is in sight. */
const WHOLE = 200
/** Height of a row of a long list (px); `toolTable.css` says the same. */
const ROW_PX = 33
/** Rows kept ready above and below what is in sight. */
const BEYOND = 12
/** Rows in sight before the window has been measured. */
const BEFORE = 30

interface InSight {
  readonly scroll: RefObject<HTMLDivElement | null>
  readonly many: boolean
  /** The rows to be drawn, and how many are left out above and below. */
  readonly first: number
  readonly last: number
  readonly aboveRows: number
  readonly belowRows: number
  /** Scrolls so that this row is in sight. */
  bring(row: number): void
}

/** Which rows of a list are in sight. @param see told of them, so that they are read */
export const useInSight = ({ total, wanted }: Rows, see: FoundTools['see']): InSight => {
  const scroll = useRef<HTMLDivElement>(null)
  const [sight, setSight] = useState({ from: 0, to: BEFORE })
  const many = total > WHOLE
  useEffect(() => {
    const box = scroll.current
    if (!box || !many) return
    const look = () =>
      setSight({ from: Math.floor(box.scrollTop / ROW_PX), to: Math.ceil((box.scrollTop + box.clientHeight) / ROW_PX) })
    look()
    box.addEventListener('scroll', look, { passive: true })
    const sizes = new ResizeObserver(look)
    sizes.observe(box)
    return () => {
      box.removeEventListener('scroll', look)
      sizes.disconnect()
    }
  }, [many])
  const first = many ? Math.max(Math.min(sight.from, total - 1) - BEYOND, 0) : 0
  const last = many ? Math.min(sight.to + BEYOND, total - 1) : total - 1
  // The answer to another question begins at its top, and nothing of it but that has been read.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another question is the trigger
  useEffect(() => {
    if (scroll.current) scroll.current.scrollTop = 0
  }, [wanted])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another question is a trigger, too
  useEffect(() => see(first, last), [see, first, last, wanted])
  const bring = useCallback(
    (row: number) => {
      const box = scroll.current
      if (!box || !many) return
      // The head of the table stays in sight and covers a row.
      const top = row * ROW_PX
      if (top < box.scrollTop) box.scrollTop = top
      else if (top + 2 * ROW_PX > box.scrollTop + box.clientHeight) box.scrollTop = top + 2 * ROW_PX - box.clientHeight
    },
    [many],
  )
  return { scroll, many, first, last, aboveRows: first, belowRows: total - 1 - last, bring }
}

import { useEffect, useRef } from 'react'
import type { ReadCode } from '../../main/contract/codes.ts'
import { sayProblem } from '../app/store.ts'
import { noteOnSheet } from '../ui/sheetNote.ts'
import { openCode } from './openCode.ts'

type Taker = (read: ReadCode) => void

const takers: { current: Taker }[] = []

/** Gives what readers read to this part for as long as it is there, instead of opening it; the newest part has it. */
export const useMarks = (take: Taker): void => {
  const latest = useRef(take)
  latest.current = take
  useEffect(() => {
    takers.push(latest)
    return () => void takers.splice(takers.indexOf(latest), 1)
  }, [])
}

/** Opens what was read, and says why where it cannot be. */
const openRead = async ({ code }: ReadCode): Promise<void> => {
  const opened = await openCode(code)
  if (!opened.ok && opened.problems[0]) sayProblem(opened.problems[0])
}

/** Does with a mark what the screen is for. Under a sheet nothing is opened: what is being filled in there stays. */
export const takeMark = (read: ReadCode): void => {
  const taker = takers.at(-1)
  if (taker) taker.current(read)
  else if (document.querySelector('dialog:modal')) noteOnSheet('scan:sheetOpen', { code: read.code })
  else void openRead(read)
}

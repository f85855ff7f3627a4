import { create } from 'zustand'
import type { Problem } from '../../../geometry/result.ts'

/** A file that came to the window from outside a screen: dropped, or opened with the program. */
interface Incoming {
  /** For the rack, until its sheet has taken it. */
  readonly rack: File | null
  /** One that could not be opened, and why. */
  readonly refused: { readonly id: string; readonly file: string; readonly problems: readonly Problem[] } | null
}

export const useIncoming = create<Incoming>()(() => ({ rack: null, refused: null }))

/** Says why a file was not opened, over whatever screen there is. */
export const refuseFile = (file: string, problems: readonly Problem[]): void =>
  useIncoming.setState({ refused: { id: crypto.randomUUID(), file, problems } })

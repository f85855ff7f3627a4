import { create } from 'zustand'

/** What is typed in the rack's find field; kept while other screens are open, and written to by a scan of a place. */
export const useFinding = create<{ readonly typed: string }>()(() => ({ typed: '' }))

export const findTyped = (typed: string): void => useFinding.setState({ typed })

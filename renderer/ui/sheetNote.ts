import { create } from 'zustand'

interface Note {
  /** Key of the text catalogue. */
  readonly key: string
  readonly params: Readonly<Record<string, string | number>>
}

/** What the open sheet has to say that came from outside it, where the status line lies under it. */
export const useSheetNote = create<{ readonly note: Note | null }>()(() => ({ note: null }))

export const noteOnSheet = (key: string, params: Note['params']): void =>
  useSheetNote.setState({ note: { key, params } })

export const clearSheetNote = (): void => useSheetNote.setState({ note: null })

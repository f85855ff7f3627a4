import { create } from 'zustand'

/** Where help is open: an entry's id, empty for the page of screens, null while it is closed. */
export const useHelp = create<{ readonly at: string | null }>()(() => ({ at: null }))

/** Opens help, at an entry where one is named. */
export const openHelp = (at = ''): void => useHelp.setState({ at })

export const closeHelp = (): void => useHelp.setState({ at: null })

import { createContext, useContext } from 'react'
import { keepValue } from './keepValue.ts'
import type { HandleId, HandleKind } from './kind.ts'

/** What becomes of a handle that was moved, and which handles there are. */
export interface Keeping {
  /** @returns false where it was not taken; the handle's field says why */
  keep(kind: HandleKind, value: number): Promise<boolean>
  may(id: HandleId | 'hand'): boolean
}

/** On Grind every handle is there and changes the job in hand. */
const KeepingContext = createContext<Keeping>({ keep: keepValue, may: () => true })

/** Gives every handle below it another way to be kept. */
export const KeepingWith = KeepingContext.Provider

export const useKeeping = (): Keeping => useContext(KeepingContext)

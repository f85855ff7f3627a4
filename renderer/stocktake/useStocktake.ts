import { create } from 'zustand'
import type { StocktakeStanding } from '../../main/contract/stocktake.ts'
import { useApp } from '../app/store.ts'
import { useAnswer } from '../app/useAnswer.ts'

/** Where one stands; empty: not said. Kept while other parts are looked at. */
export const useHere = create<{ readonly placeId: string }>()(() => ({ placeId: '' }))

export const standIn = (placeId: string): void => useHere.setState({ placeId })

/** @returns the stocktake begun last, read again when anything of it changed; undefined until it was read, null: there was none */
export const useStocktake = (): StocktakeStanding | null | undefined => {
  const { dayChanges, rackChanges, places } = useApp()
  return useAnswer('stocktake.last', {}, [dayChanges, rackChanges, places])
}

import { useEffect, useState } from 'react'
import { create } from 'zustand'
import type { StocktakeStanding } from '../../main/contract/stocktake.ts'
import { sayProblem, useApp } from '../app/store.ts'
import { call } from '../app/transport.ts'

/** Where one stands; empty: not said. Kept while other parts are looked at. */
export const useHere = create<{ readonly placeId: string }>()(() => ({ placeId: '' }))

export const standIn = (placeId: string): void => useHere.setState({ placeId })

/** @returns the stocktake begun last, read again when anything of it changed; undefined until it was read, null: there was none */
export const useStocktake = (): StocktakeStanding | null | undefined => {
  const { dayChanges, rackChanges, places } = useApp()
  const [standing, setStanding] = useState<StocktakeStanding | null>()
  // biome-ignore lint/correctness/useExhaustiveDependencies: changes are the trigger
  useEffect(() => {
    let wanted = true
    void call('stocktake.last', {}).then((last) => {
      if (!wanted) return
      if (last.ok) setStanding(last.value)
      else if (last.problems[0]) sayProblem(last.problems[0])
    })
    return () => {
      wanted = false
    }
  }, [dayChanges, rackChanges, places])
  return standing
}

import { useSyncExternalStore } from 'react'

const follow = (changed: () => void): (() => void) => {
  addEventListener('resize', changed)
  return () => removeEventListener('resize', changed)
}

/** @returns the height of the window in CSS pixels, renewed as it changes */
export const useWindowHeight = (): number => useSyncExternalStore(follow, () => innerHeight)

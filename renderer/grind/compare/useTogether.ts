import { useEffect, useRef, useState } from 'react'
import { FIGURES_MS, type Running, useHistoryLength } from '../useLiveGrind.ts'
import type { Other } from './comparing.ts'
import type { Pair } from './together.ts'

/** The last moment that both grinds have shown; at rest it is exact. */
export const usePair = ({ together }: Other): Pair | null => {
  const [shown, setShown] = useState({ together, pair: together.pair })
  const shownMs = useRef(0)
  useEffect(() => {
    let timer = 0
    const show = (): void => {
      timer = 0
      shownMs.current = performance.now()
      setShown({ together, pair: together.pair })
    }
    const look = (): void => {
      timer ||= window.setTimeout(show, Math.max(shownMs.current + FIGURES_MS - performance.now(), 0))
    }
    show()
    const end = together.subscribe(look)
    return () => {
      end()
      window.clearTimeout(timer)
    }
  }, [together])
  // Until the first look, figures of a comparison before this one must not stand under its name.
  return shown.together === together ? shown.pair : together.pair
}

/** The deepest corner of a run as far as it is worked out (mm). */
export const useDeepestMm = (running: Running): number => {
  const worked = useHistoryLength(running)
  let deepestMm = 0
  for (const row of running.live.history.slice(0, worked))
    deepestMm = Math.max(deepestMm, row.reliefLeftMm, row.reliefRightMm)
  return deepestMm
}

import { useEffect, useMemo, useRef } from 'react'
import type { RunShape } from '../../worker/protocol.ts'
import { type Running, useEachFrame } from '../useLiveGrind.ts'
import type { PutBy, Together } from './together.ts'

/** One of two grinds that are kept together. */
export interface Paired {
  readonly together: Together
  readonly side: 'own' | 'other'
}

type EdgeShape = Pick<RunShape, 'uMm' | 'throughCount'>
type DrawEdge = (vMm: Float64Array, pressureNPerMm: Float64Array, shape: EdgeShape) => void

/**
 * Draws an edge by hand: with every frame of its run, or, where it is paired, with every moment that both grinds have shown,
 * so that two lines in one glass have one playhead.
 */
export const useEachEdge = (running: Running, paired: Paired | undefined, draw: DrawEdge): void => {
  const { shape } = running
  const edgeShape = useMemo(() => ({ uMm: shape.uMm, throughCount: 1 }), [shape])
  const drawMet = ({ edgeMm, pressureNPerMm }: PutBy): void => draw(edgeMm, pressureNPerMm, edgeShape)
  const latest = useRef(drawMet)
  latest.current = drawMet
  useEachFrame(running, ({ vMm, pressureNPerMm }) => {
    if (paired?.together.pair) drawMet(paired.together[paired.side])
    else draw(vMm, pressureNPerMm, shape)
  })
  const together = paired?.together
  const side = paired?.side
  useEffect(() => {
    if (!together || !side) return
    let request = 0
    const drawNow = (): void => {
      request = 0
      latest.current(together[side])
    }
    const end = together.subscribe(() => {
      request ||= requestAnimationFrame(drawNow)
    })
    return () => {
      end()
      cancelAnimationFrame(request)
    }
  }, [together, side])
}

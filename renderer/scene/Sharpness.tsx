import { useFrame, useThree } from '@react-three/fiber'
import { useEffect, useRef } from 'react'

/** A picture that takes longer than this while things move is drawn coarser (ms): below 30 a second motion breaks up. */
const SLOW_MS = 33
/** Pictures over which that is judged. */
const JUDGED = 3
/** The coarsest motion gets, as a share of the screen's own pixels each way. */
const COARSEST = 0.4
/** A longer gap than this was a pause, not a slow picture (ms). */
const PAUSE_MS = 700

interface SharpnessProps {
  readonly moving: boolean
  /** Told what share of the screen's own pixels, each way, is to be drawn. */
  readonly onShare: (share: number) => void
}

/** Keeps motion smooth where drawing is slow: coarser while things move, full sharpness as soon as they are still. */
export const Sharpness = ({ moving, onShare }: SharpnessProps) => {
  const invalidate = useThree((state) => state.invalidate)
  const share = useRef(1)
  const judged = useRef({ count: 0, spentMs: 0 })
  useEffect(() => {
    judged.current = { count: 0, spentMs: 0 }
    onShare(moving ? share.current : 1)
    invalidate()
  }, [moving, onShare, invalidate])
  useFrame((_, deltaSeconds) => {
    if (!moving || deltaSeconds * 1000 > PAUSE_MS) return
    const now = judged.current
    now.count += 1
    now.spentMs += deltaSeconds * 1000
    if (now.count < JUDGED) return
    const coarser = Math.sqrt((SLOW_MS * now.count) / now.spentMs)
    judged.current = { count: 0, spentMs: 0 }
    if (coarser > 0.9 || share.current === COARSEST) return
    share.current = Math.max(share.current * coarser, COARSEST)
    onShare(share.current)
  })
  return null
}

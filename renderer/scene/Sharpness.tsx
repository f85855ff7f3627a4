import { useFrame, useThree } from '@react-three/fiber'
import { useCallback, useEffect, useRef } from 'react'
import type { LiveGrind } from '../worker/liveGrind.ts'
import type { Stops } from './machine.ts'

/** A picture that takes longer than this while things move is drawn coarser (ms): below 30 a second motion breaks up. */
const SLOW_MS = 33
/** Pictures over which that is judged. */
const JUDGED = 3
/** The coarsest motion gets, as a share of the screen's own pixels each way: below, a blade's edge shows its steps. */
const COARSEST = 0.6
/**
 * Motion begins with this share where the processor draws: the window waits for every such picture, and one at the
 * screen's own pixels takes 30 to 75 ms of two cores.
 */
const FIRST_SOFTWARE_SHARE = 0.7
/** A longer gap than this was a pause, not a slow picture (ms). */
const PAUSE_MS = 700
/** Without graphics that smooth edges, a still picture is drawn this much finer than the screen, and so comes out smooth. */
const STILL_SOFTWARE_SHARE = 2
/** Nothing has changed for this long: the picture is still (ms); longer than the blade takes to lift. */
const STILL_MS = 320

interface SharpnessProps {
  readonly moving: boolean
  readonly software: boolean
  /** What changes the picture while nothing plays: a seek, a stop being turned, the lift. */
  readonly live: LiveGrind
  readonly stops: Stops
  readonly lifted: boolean
  /** Told what share of the screen's own pixels, each way, is to be drawn. */
  readonly onShare: (share: number) => void
}

/** Keeps motion smooth where drawing is slow: coarser while things move, full sharpness as soon as they are still. */
export const Sharpness = ({ moving, software, live, stops, lifted, onShare }: SharpnessProps) => {
  const share = useMotionShare(moving, software ? FIRST_SOFTWARE_SHARE : 1, onShare)
  const invalidate = useThree((state) => state.invalidate)
  const canvas = useThree((state) => state.gl.domElement)
  const timer = useRef(0)
  const changed = useCallback(() => {
    clearTimeout(timer.current)
    canvas.dataset.still = 'false'
    onShare(moving ? share.current : 1)
    invalidate()
    if (moving) return
    timer.current = window.setTimeout(() => {
      onShare(software ? STILL_SOFTWARE_SHARE : 1)
      canvas.dataset.still = 'true'
      invalidate()
    }, STILL_MS)
  }, [moving, software, canvas, share, onShare, invalidate])
  // biome-ignore lint/correctness/useExhaustiveDependencies: stops and lift are the trigger
  useEffect(changed, [changed, stops, lifted])
  useEffect(() => live.subscribe('frame', changed), [live, changed])
  useEffect(() => () => clearTimeout(timer.current), [])
  return null
}

/** @returns the share of pixels that motion can be drawn with, found while it is drawn */
const useMotionShare = (moving: boolean, firstShare: number, onShare: (share: number) => void) => {
  const share = useRef(firstShare)
  const judged = useRef({ count: 0, spentMs: 0 })
  // biome-ignore lint/correctness/useExhaustiveDependencies: each motion is judged by its own pictures
  useEffect(() => {
    judged.current = { count: 0, spentMs: 0 }
  }, [moving])
  useFrame((_, deltaSeconds) => {
    if (!moving || deltaSeconds * 1000 > PAUSE_MS) return
    const now = judged.current
    now.count += 1
    now.spentMs += deltaSeconds * 1000
    if (now.count < JUDGED) return
    const coarser = Math.sqrt((SLOW_MS * now.count) / now.spentMs)
    now.count = 0
    now.spentMs = 0
    if (coarser > 0.9 || share.current === COARSEST) return
    share.current = Math.max(share.current * coarser, COARSEST)
    onShare(share.current)
  })
  return share
}

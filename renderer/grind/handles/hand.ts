import type { TFunction } from 'i18next'
import type { Job } from '../../../geometry/job.ts'
import type { Figures } from '../../ui/useFigure.ts'
import type { LiveGrind } from '../../worker/liveGrind.ts'
import type { Told } from './kind.ts'
import type { Range } from './range.ts'

/** The hand goes in millimetres along the edge, nearer than a fingertip's middle can be told. */
const HAND_SNAP_MM = 1

/** From the left end of the finger reach to its right end (mm). */
export const handRange = ({ motion }: Job): Range => ({
  min: -motion.fingerReachMm,
  max: motion.fingerReachMm,
  snap: HAND_SNAP_MM,
})

/** A place across the blade as a share of the reach, -1 left to +1 right; without a reach the hand stays in the middle. */
export const shareOf = ({ motion }: Job, placeMm: number): number =>
  motion.fingerReachMm === 0 ? 0 : Math.min(Math.max(placeMm / motion.fingerReachMm, -1), 1)

/** The least share of the reach that a blade held by hand still moves over (as the reach): below, a twitch would cross it. */
const LEAST_WAY = 0.5

/**
 * Where the load comes to when the pointer has moved so far. As the load goes out on one side, the blade goes to the other
 * by the traverse, so the point held moves by their difference: the blade stays under the pointer.
 */
export const draggedPlaceMm = ({ motion, fixture }: Job, fromMm: number, movedMm: number): number => {
  const { fingerReachMm: reach, traverseMm } = motion
  if (reach === 0) return 0
  const way = Math.max(reach - (fixture.kind === 'freehand' ? 0 : traverseMm), LEAST_WAY * reach)
  return Math.min(Math.max(fromMm + (movedMm * reach) / way, -reach), reach)
}

/** A sweep's way by keys takes a planned sweep's steps: the places of each step on the way, the last one where it goes, one at least. */
export const stepsBetween = ({ motion }: Job, fromMm: number, toMm: number): number[] => {
  const perMm = motion.fingerReachMm === 0 ? 0 : motion.stepsPerSweep / (2 * motion.fingerReachMm)
  const count = Math.max(Math.round(Math.abs(toMm - fromMm) * perMm), 1)
  return Array.from({ length: count }, (_, k) => fromMm + ((toMm - fromMm) * (k + 1)) / count)
}

/** Grinds on the way from where the load stands to a place across the blade (mm). */
export const grindTo = (live: LiveGrind, job: Job, toMm: number): void => {
  const fromMm = live.latest?.loadPlaceMm ?? toMm
  for (const mm of stepsBetween(job, fromMm, toMm)) live.press(shareOf(job, mm), 1)
}

/** Where the hand is, in words. */
export const handTold = (placeMm: number, t: TFunction, figures: Figures): Required<Told> => ({
  value: figures.inWords(Math.abs(placeMm), 'mm', 0),
  follows: t(`handles:hand.${placeMm === 0 ? 'middle' : placeMm < 0 ? 'left' : 'right'}`),
})

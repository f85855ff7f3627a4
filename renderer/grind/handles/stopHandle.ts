import { quantities } from '../../../geometry/quantities.ts'
import type { Side } from '../../../geometry/report.ts'
import { setUpOf } from '../../../geometry/setUp.ts'
import { stopsOf, turnsPath, withTurns } from '../stops.ts'
import { type HandleFacts, type HandleKind, rangeWithin } from './kind.ts'
import { type Range, snapped } from './range.ts'

/** Turns are taken in twentieths, as fine as a hand sets a screw. */
const TURNS_SNAP = 0.05
/** Between two notches the screw turns in a thumb's width (px for half a turn), so that a twentieth can still be met. */
const FREE_PX = 32
/** At whole and half turns it holds for this way (px) before it goes on: a notch that the hand feels. */
const NOTCH_PX = 8
const PX_PER_HALF = FREE_PX + NOTCH_PX

/** Where a screw's turns lie on the pointer's way: notch, free, notch, free. */
const pxOf = (turns: number): number => {
  const halves = Math.floor(2 * turns + 1e-9)
  const part = 2 * turns - halves
  return halves * PX_PER_HALF + (part < 1e-9 ? 0 : NOTCH_PX / 2 + part * FREE_PX)
}

const turnsAt = (px: number): number => {
  const halves = Math.floor(px / PX_PER_HALF)
  const part = (px - halves * PX_PER_HALF - NOTCH_PX / 2) / FREE_PX
  return (halves + Math.min(Math.max(part, 0), 1)) / 2
}

/** Turns after a drag outwards by so many pixels. */
export const draggedTurns = (fromTurns: number, outwardPx: number, range: Range): number =>
  snapped(turnsAt(pxOf(fromTurns) + outwardPx), range)

/** Whole and half turns are felt. */
export const isNotch = (turns: number): boolean => Math.abs(2 * turns - Math.round(2 * turns)) < 1e-6

/** The head of a set screw: dragged outwards it gives more turns. */
export const stopHandle = (side: Side, facts: HandleFacts): HandleKind => {
  const { t, figures, job, setUp } = facts
  const left = side === 'left'
  const path = turnsPath(side)
  const stops = stopsOf(job, setUp)
  const value = left ? stops.leftTurns : stops.rightTurns
  const limits = left ? quantities.motion.stopTurnsLeft : quantities.motion.stopTurnsRight
  const range = rangeWithin(limits, TURNS_SNAP, value, (turns) => withTurns(job, side, turns))
  return {
    id: left ? 'stopLeft' : 'stopRight',
    anchors: [left ? 'stopLeft' : 'stopRight'],
    name: t(left ? 'handles:stopLeft.name' : 'handles:stopRight.name'),
    hint: t('handles:hint.stop'),
    cursor: 'ew-resize',
    path,
    value,
    range,
    caution: 'stops',
    grip: () => (dxPx) => draggedTurns(value, left ? -dxPx : dxPx, range),
    notch: isNotch,
    change: (now, turns) => withTurns(now, side, turns),
    tell: (turns, now) => {
      const triangle = setUpOf(now)
      const drawn = triangle.ok ? stopsOf(now, triangle.value) : stops
      const play = figures.inWords(left ? drawn.leftMm : drawn.rightMm, 'mm', 2)
      return { value: figures.inWords(turns, 'turn', 2), follows: t('handles:follows.play', { play }) }
    },
  }
}

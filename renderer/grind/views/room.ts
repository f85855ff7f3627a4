import type { Moment, Running } from '../useLiveGrind.ts'
import type { ViewName } from '../viewing.ts'

/** Where a view is drawn. */
export interface Room {
  /** Width of the blade in the views that look across it. */
  readonly plotPx: number
  /** Height for the drawing in the model's place; null: in the column, each view as high as it needs. */
  readonly heightPx: number | null
}

/** What every view is given. */
export interface ViewProps {
  readonly running: Running
  readonly moment: Moment
  /** Lifted off the wheel: nothing touches. */
  readonly lifted: boolean
  readonly room: Room
}

/** Lines of text under a drawing in the model's place are given this height (px). */
const LINES_PX = 76

/** @returns the height of a drawing: all that there is in the model's place, or as in the column */
export const heightIn = ({ heightPx }: Room, inColumnPx: number): number =>
  heightPx === null ? inColumnPx : Math.max(heightPx - LINES_PX, inColumnPx)

/** Keeps the key that was pressed in hand: the view that it moves takes the focus with it. */
let carried: ViewName | null = null

/** The focus goes with this view to where it is drawn next. */
export const carryFocus = (view: ViewName): void => {
  carried = view
}

/** @returns whether the focus was carried with this view; told once */
export const takeFocus = (view: ViewName): boolean => {
  if (carried !== view) return false
  carried = null
  return true
}

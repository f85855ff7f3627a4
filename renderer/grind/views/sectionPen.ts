import type { Layout } from '../../setUp/layout.ts'
import type { PointRow } from '../pointRow.ts'
import type { BladeAt } from './liveTriangle.ts'

type Row = Pick<PointRow, 'add'>

/** Adds places of a section to rows of points, without making pairs of them. */
export interface SectionPen {
  readonly blade: BladeAt
  /** A place of the drawing's plane, as in setUp/triangle.ts. */
  add(row: Row, xMm: number, yMm: number): void
  /** A place of the blade: v up from where the edge was, n from the back. */
  onBlade(row: Row, vMm: number, nMm: number): void
  /** A place so far (px) from the edge, at an angle as the screen counts: down from rightwards. */
  fromEdge(row: Row, edgeVMm: number, rad: number, px: number): void
  /** The angle at which the back goes on below the edge. */
  backRad(): number
}

/** @param blade set to the moment before anything is added */
export const sectionPen = (blade: BladeAt, layout: Layout): SectionPen => {
  const [startX, startY] = layout.px([0, 0])
  const each = layout.px([1, 0])[0] - startX
  const xPx = (xMm: number): number => startX + xMm * each
  const yPx = (yMm: number): number => startY - yMm * each
  return {
    blade,
    add: (row, xMm, yMm) => row.add(xPx(xMm), yPx(yMm)),
    onBlade: (row, vMm, nMm) => row.add(xPx(blade.xMm(vMm, nMm)), yPx(blade.yMm(vMm, nMm))),
    fromEdge: (row, edgeVMm, rad, px) =>
      row.add(xPx(blade.xMm(edgeVMm, 0)) + px * Math.cos(rad), yPx(blade.yMm(edgeVMm, 0)) + px * Math.sin(rad)),
    backRad: () => Math.atan2(blade.yMm(0, 0) - blade.yMm(-1, 0), blade.xMm(-1, 0) - blade.xMm(0, 0)),
  }
}

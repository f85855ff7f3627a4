import type { Report } from '../../geometry/report.ts'

/** Below this relief (mm) an edge is judged by a straightedge against the light: no leaf is so thin. */
const STRAIGHT_MM = 0.005

/** Whether a straight edge is wanted. */
export const isStraight = ({ plan }: Report): boolean => plan.reliefMm < STRAIGHT_MM

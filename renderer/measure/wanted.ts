import { radiusOfRelief } from '../../geometry/aim.ts'
import type { Report } from '../../geometry/report.ts'
import type { Tool } from '../../main/contract/entities.ts'

/** A curve wanted of the edge. */
export interface WantedCurve {
  readonly reliefMm: number
  /** Null for a straight edge. */
  readonly edgeRadiusMm: number | null
}

/** @returns what is wanted of the edge: by the job, or where none can be worked out, by the tool */
export const wantedOf = ({ reliefMm, widthMm }: Tool, report: Report | null): WantedCurve => {
  if (report) return report.plan
  return { reliefMm, edgeRadiusMm: reliefMm === 0 ? null : radiusOfRelief(widthMm, reliefMm) }
}

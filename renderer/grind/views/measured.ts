import type { Report } from '../../../geometry/report.ts'
import type { BenchLog } from '../../../main/contract/entities.ts'
import type { MeasuredCurve } from '../../glass/glassLayout.ts'
import { readOfLine } from '../../measure/read.ts'
import { knownEdges } from '../../wood/edges.ts'

/** The edge as the bench last measured it. */
export interface Measured {
  readonly line: BenchLog
  readonly curve: MeasuredCurve
  readonly reliefMm: number
}

/** @returns the newest reading that shows the edge as ground, or else as honed; null where the log has none */
export const measuredOf = (report: Report, readings: readonly BenchLog[]): Measured | null => {
  const edges = knownEdges(report, readings)
  const line = (edges.find(({ key }) => key === 'asGround') ?? edges.find(({ key }) => key === 'asHoned'))?.line
  const read = line && readOfLine(line, report.job.blade)
  return line && read ? { line, curve: read.curve, reliefMm: read.edge.reliefMm } : null
}

/** @returns how deep a measured edge reaches (mm) */
export const deepestMeasuredMm = (measured: Measured | null): number =>
  Math.max(0, ...(measured?.curve.marks ?? []).map(({ mostMm }) => mostMm))

import { type Profile, profileOf } from '../../geometry/profile.ts'
import type { Report } from '../../geometry/report.ts'
import type { BenchLog } from '../../main/contract/entities.ts'
import { steps } from '../glass/glassLayout.ts'
import { wantedDepthMm } from '../glass/wantedDepth.ts'
import { type Iron, readOfLine } from '../measure/read.ts'
import type { EdgeKey } from './setting.ts'

/** An edge to look at; `line` is the reading it comes from. */
export interface KnownEdge {
  readonly key: EdgeKey
  /** At the wheel, back up. */
  readonly profile: Profile
  readonly line: BenchLog | null
}

/** Points on a wanted edge: 0.5 mm apart on the widest iron. */
const POINTS = 220

const wantedEdge = ({ plan, job }: Report): KnownEdge => {
  const uMm = steps(POINTS).map((share) => (share * job.blade.widthMm) / 2)
  const depths = uMm.map((u) => wantedDepthMm(plan.edgeRadiusMm, u))
  return { key: 'wanted', profile: profileOf(uMm, depths), line: null }
}

const measuredEdge = (key: 'asGround' | 'asHoned', line: BenchLog, iron: Iron): KnownEdge | null => {
  const curve = readOfLine(line, iron)?.curve.line
  if (!curve) return null
  const profile = profileOf(
    curve.map(([u]) => u),
    curve.map(([, depthMm]) => depthMm),
  )
  return { key, profile, line }
}

/** @returns the edges of an iron that are known: of each kind of reading the newest that shows one */
export const knownEdges = (report: Report, readings: readonly BenchLog[]): readonly KnownEdge[] => {
  const newest = (stage: 'asGround' | 'asHoned') =>
    readings
      .filter((line) => line.stage === stage)
      .map((line) => measuredEdge(stage, line, report.job.blade))
      .find((edge) => edge !== null)
  const predicted = profileOf(report.grind.edgeUMm, report.grind.edgeVMm)
  return [
    wantedEdge(report),
    { key: 'predicted', profile: predicted, line: null } as const,
    newest('asGround'),
    newest('asHoned'),
  ].filter((edge) => edge !== undefined)
}

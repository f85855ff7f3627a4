import type { Symptom } from '../../geometry/diagnose.ts'
import { predictedReliefMm } from '../../geometry/expectedLeaves.ts'
import type { Report } from '../../geometry/report.ts'
import type { BenchLog } from '../../main/contract/entities.ts'
import { type Iron, readOfLine } from '../measure/read.ts'
import { against } from '../measure/reading.ts'

/** A curve below this share of what was predicted is none. */
const NONE_SHARE = 0.2

/** @returns what the newest reading after grinding shows of the curve, held against what was predicted; null: nothing, or no reading */
export const symptomOfReading = (readings: readonly BenchLog[], iron: Iron, report: Report): Symptom | null => {
  const line = readings.find(({ stage }) => stage === 'asGround')
  const read = line && readOfLine(line, iron)
  if (!read) return null
  const predictedMm = predictedReliefMm(report)
  const { verdict } = against(read.span, predictedMm)
  if (verdict === 'as') return null
  if (verdict === 'more') return 'curveMore'
  return read.edge.reliefMm < NONE_SHARE * predictedMm ? 'curveNone' : 'curveLess'
}

import type { BenchLog } from '../../main/contract/entities.ts'
import { changeSheet, type Method, noPoint, type Sheet, setStep } from './bench.ts'
import { leavesOfLine } from './reading.ts'

/** @returns the newest reading taken in this way that can be taken again. @param readings newest first */
export const lastTimeOf = (readings: readonly BenchLog[], method: Method): BenchLog | undefined =>
  readings.find((line) => line.method === method && (method === 'leaves' || line.points !== null))

/** @returns what a sheet holds when a line of the log is taken again. @param name what its points are called from then on */
export const againOf = (line: BenchLog, name: string): Partial<Sheet> => {
  const points = line.points ?? []
  if (line.method === 'leaves') return { leaves: leavesOfLine(line) }
  if (line.method === 'points') return { points: [...points, noPoint] }
  if (line.method === 'trace') return { profile: { points, name } }
  const [left, middle, right] = points
  const gapMm = (point: typeof left) => point?.gapMm ?? null
  return {
    shavings: { leftMm: gapMm(left), middleMm: gapMm(middle), rightMm: gapMm(right), outMm: right?.uMm ?? null },
  }
}

/** Fills a line of the log in again, with how fine it was read. */
export const takeAgain = (line: BenchLog, name: string): void => {
  changeSheet(line.toolId, againOf(line, name))
  if (line.leafStepMm !== null) setStep(line.method, line.leafStepMm)
}

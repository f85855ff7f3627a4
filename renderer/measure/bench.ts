import { create } from 'zustand'
import type { GapPoint } from '../../geometry/measurePoints.ts'
import { type Problem, problem } from '../../geometry/result.ts'
import type { BenchLogDraft } from '../../main/contract/entities.ts'
import type { Iron, Taken } from './read.ts'
import { type Leaves, noLeaves } from './reading.ts'

export type Method = BenchLogDraft['method']

/** A place across and the gap there, as typed; null: not yet. */
export interface PointDraft {
  readonly uMm: number | null
  readonly gapMm: number | null
}

/** Thicknesses of three shavings from a narrow strip, and how far from the middle the outer two were planed. */
export interface ShavingsDraft {
  readonly leftMm: number | null
  readonly middleMm: number | null
  readonly rightMm: number | null
  readonly outMm: number | null
}

/** A profile taken from a file or a photograph. */
export interface ProfileDraft {
  readonly points: readonly GapPoint[]
  /** Its name. */
  readonly name: string
}

/** A reading being taken of one iron; it stays while other screens and irons are looked at. */
export interface Sheet {
  readonly method: Method
  readonly leaves: Leaves
  readonly points: readonly PointDraft[]
  readonly shavings: ShavingsDraft
  readonly profile: ProfileDraft | null
  /** Null: the one that comes next. */
  readonly stage: BenchLogDraft['stage'] | null
  readonly groundMinutes: number | null
  readonly setBackMm: number | null
  readonly note: string
  readonly problem: Problem | null
}

interface Bench {
  /** By the tool's id. */
  readonly sheets: Readonly<Record<string, Sheet>>
  /** How fine each way reads: that belongs to the bench, not to an iron. */
  readonly stepsMm: Readonly<Record<Method, number>>
}

export const noPoint: PointDraft = { uMm: null, gapMm: null }

const blank: Sheet = {
  method: 'leaves',
  leaves: noLeaves,
  points: [noPoint, noPoint, noPoint],
  shavings: { leftMm: null, middleMm: null, rightMm: null, outMm: null },
  profile: null,
  stage: null,
  groundMinutes: null,
  setBackMm: null,
  note: '',
  problem: null,
}

/** A set of leaves by twentieths, a gauge for depths by fiftieths, calipers by hundredths, a trace by what a pixel shows. */
const usualStepsMm: Readonly<Record<Method, number>> = { leaves: 0.05, points: 0.02, shavings: 0.01, trace: 0.01 }

export const useBench = create<Bench>()(() => ({ sheets: {}, stepsMm: usualStepsMm }))

/** @returns the reading being taken of a tool */
export const useSheet = (toolId: string): Sheet => useBench(({ sheets }) => sheets[toolId] ?? blank)

/** As `useSheet`, once. */
export const sheetOf = (toolId: string): Sheet => useBench.getState().sheets[toolId] ?? blank

/** Changes the reading being taken of a tool. */
export const changeSheet = (toolId: string, patch: Partial<Sheet>): void =>
  useBench.setState(({ sheets }) => ({
    sheets: { ...sheets, [toolId]: { ...(sheets[toolId] ?? blank), problem: null, ...patch } },
  }))

/** Begins the next reading of a tool in the same way. */
export const clearSheet = (toolId: string): void => changeSheet(toolId, { ...blank, method: sheetOf(toolId).method })

/** Sets how fine a way of measuring reads. */
export const setStep = (method: Method, stepMm: number): void =>
  useBench.setState(({ stepsMm }) => ({ stepsMm: { ...stepsMm, [method]: stepMm } }))

/** Where the outer shavings are planed unless said otherwise, as a share of the width. */
const OUT_SHARE = 0.4

/** @returns how far out the outer shavings are planed */
export const outOf = ({ outMm }: ShavingsDraft, { widthMm }: Iron): number =>
  outMm ?? Math.round(widthMm * OUT_SHARE * 2) / 2

const pointsOf = (sheet: Sheet, iron: Iron): readonly GapPoint[] => {
  if (sheet.method === 'trace') return sheet.profile?.points ?? []
  if (sheet.method === 'points')
    return sheet.points.filter((point): point is GapPoint => point.uMm !== null && point.gapMm !== null)
  const { leftMm, middleMm, rightMm } = sheet.shavings
  if (sheet.method === 'leaves' || leftMm === null || middleMm === null || rightMm === null) return []
  const outMm = outOf(sheet.shavings, iron)
  return [
    { uMm: -outMm, gapMm: leftMm },
    { uMm: 0, gapMm: middleMm },
    { uMm: outMm, gapMm: rightMm },
  ]
}

/** @returns what is taken so far */
export const takenOf = (sheet: Sheet, stepsMm: Bench['stepsMm'], iron: Iron): Taken => ({
  method: sheet.method,
  leaves: sheet.leaves,
  points: pointsOf(sheet, iron),
  stepMm: stepsMm[sheet.method],
})

/** What is missing of a reading, at the first field without it. */
export const missingOf = (sheet: Sheet): Problem => {
  const { method, leaves, shavings } = sheet
  if (method === 'leaves') return problem('missing', leaves.leftMm === null ? 'cornerLeftMm' : 'cornerRightMm')
  if (method === 'trace') return problem('profileMissing')
  if (method === 'points') return problem('pointsTooFew', 'points')
  const key = (['leftMm', 'middleMm', 'rightMm'] as const).find((each) => shavings[each] === null)
  return problem('missing', key ?? 'middleMm')
}

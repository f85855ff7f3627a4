import { create } from 'zustand'
import { quantities } from '../../geometry/quantities.ts'
import { type Problem, problem } from '../../geometry/result.ts'
import type { BenchLogDraft, Tool } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { addReading } from '../app/storeRack.ts'
import { edgeOfLeaves, type Leaves, noLeaves, pathOf } from './reading.ts'

/** A reading being taken of one iron; it stays while other screens and irons are looked at. */
export interface Sheet {
  readonly leaves: Leaves
  /** Null: the one that comes next. */
  readonly stage: BenchLogDraft['stage'] | null
  readonly note: string
  readonly problem: Problem | null
}

interface Bench {
  /** By the tool's id. */
  readonly sheets: Readonly<Record<string, Sheet>>
  /** The set of leaves belongs to the bench, not to an iron. */
  readonly stepMm: number
}

const blank: Sheet = { leaves: noLeaves, stage: null, note: '', problem: null }

const { defaultValue, min } = quantities.measure.stepMm

export const useBench = create<Bench>()(() => ({ sheets: {}, stepMm: defaultValue ?? min }))

/** @returns the reading being taken of a tool */
export const useSheet = (toolId: string): Sheet => useBench(({ sheets }) => sheets[toolId] ?? blank)

/** Changes the reading being taken of a tool. */
export const changeSheet = (toolId: string, patch: Partial<Sheet>): void =>
  useBench.setState(({ sheets }) => ({
    sheets: { ...sheets, [toolId]: { ...(sheets[toolId] ?? blank), problem: null, ...patch } },
  }))

/** Sets how far the leaves lie apart. */
export const setStep = (stepMm: number): void => useBench.setState({ stepMm })

/** @returns why the leaves typed cannot be kept, or null; where they only lay askew they can, since that is asked for */
const refused = ({ leaves }: Sheet, { widthMm }: Tool, stepMm: number): Problem | null => {
  const read = edgeOfLeaves(leaves, stepMm, widthMm)
  if (read === null) return problem('missing', leaves.leftMm === null ? pathOf.leftMm : pathOf.rightMm)
  return read.ok ? null : (read.problems[0] as Problem)
}

/** Writes the reading of a tool into the bench log, with the job in hand, and begins the next. @returns whether it is kept */
export const keepReading = async (tool: Tool, stage: BenchLogDraft['stage']): Promise<boolean> => {
  const { sheets, stepMm } = useBench.getState()
  const sheet = sheets[tool.id] ?? blank
  const wrong = refused(sheet, tool, stepMm)
  if (wrong) {
    changeSheet(tool.id, { problem: wrong })
    return false
  }
  const { leftMm, halfwayMm, rightMm } = sheet.leaves
  const leaves = { reliefLeftMm: leftMm, reliefRightMm: rightMm, reliefHalfwayMm: halfwayMm, leafStepMm: stepMm }
  const jobId = useApp.getState().job?.id ?? null
  const added = await addReading({ toolId: tool.id, jobId, stage, ...leaves, who: '', note: sheet.note }, tool.name)
  if (!added.ok) changeSheet(tool.id, { problem: added.problems[0] ?? null })
  else changeSheet(tool.id, blank)
  return added.ok
}

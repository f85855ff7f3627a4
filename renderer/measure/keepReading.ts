import type { Problem } from '../../geometry/result.ts'
import type { BenchLogDraft, Tool } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { addReading } from '../rack/edits.ts'
import { changeSheet, clearSheet, missingOf, type Sheet, sheetOf, takenOf, useBench } from './bench.ts'
import { type Read, readOf, type Taken } from './read.ts'

/** Corners and halfway as the log keeps them: the leaves that passed, or what the points show of them. */
const reliefsOf = ({ method, leaves }: Taken, { edge }: Read) =>
  method === 'leaves'
    ? { reliefLeftMm: leaves.leftMm, reliefRightMm: leaves.rightMm, reliefHalfwayMm: leaves.halfwayMm }
    : { reliefLeftMm: edge.reliefLeftMm, reliefRightMm: edge.reliefRightMm, reliefHalfwayMm: edge.halfwayMm }

const draftOf = (tool: Tool, stage: BenchLogDraft['stage'], sheet: Sheet, taken: Taken, read: Read) => ({
  toolId: tool.id,
  jobId: useApp.getState().job?.id ?? null,
  stage,
  method: taken.method,
  points: taken.method === 'leaves' ? null : [...taken.points],
  ...reliefsOf(taken, read),
  leafStepMm: taken.stepMm,
  groundMinutes: stage === 'asGround' ? sheet.groundMinutes : null,
  setBackMm: stage === 'asGround' ? sheet.setBackMm : null,
  who: '',
  note: sheet.note,
})

const refuse = (tool: Tool, problem: Problem | null): false => {
  changeSheet(tool.id, { problem })
  return false
}

/** Writes the reading of a tool into the bench log, with the job in hand, and begins the next. @returns whether it is kept */
export const keepReading = async (tool: Tool, stage: BenchLogDraft['stage']): Promise<boolean> => {
  const sheet = sheetOf(tool.id)
  const taken = takenOf(sheet, useBench.getState().stepsMm, tool)
  const read = readOf(taken, tool)
  if (read === null) return refuse(tool, missingOf(sheet))
  if (!read.ok) return refuse(tool, read.problems[0] ?? null)
  const added = await addReading(draftOf(tool, stage, sheet, taken, read.value), tool.name)
  if (!added.ok) return refuse(tool, added.problems[0] ?? null)
  // What was begun while it was written stays.
  if (sheetOf(tool.id) === sheet) clearSheet(tool.id)
  return true
}

import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { LabelNoun } from '../../main/contract/codes.ts'
import type { FoundByCode } from '../../main/contract/labels.ts'
import { placePath } from '../../main/contract/placePath.ts'
import { go } from '../app/route.ts'
import { say, useApp } from '../app/store.ts'
import { takeTool } from '../app/storeJob.ts'
import { call } from '../app/transport.ts'
import { findTyped } from '../rack/finding.ts'
import { openServing } from '../rack/serving/servingSheet.ts'
import { findCode } from './findCode.ts'

const openTool = async ({ id }: FoundByCode): Promise<boolean> => {
  const found = await call('tool.one', { id })
  const tool = found.ok ? found.value : null
  if (!tool) return false
  takeTool(tool)
  go('rack', tool.code)
  return true
}

const openSheet = ({ noun, id }: FoundByCode): boolean => {
  go('rack', useApp.getState().tool?.code ?? null)
  return (noun === 'station' || noun === 'fixture') && openServing(noun, id)
}

/** What belongs in a place is found by the names on the way to it. */
const openServingName = ({ id }: FoundByCode): boolean => {
  const path = placePath(useApp.getState().places, id)
  if (path === '') return false
  findTyped(path)
  go('rack', useApp.getState().tool?.code ?? null)
  return true
}

/** What a code opens, a line a noun. Each answers whether the window knows the record yet. */
const openers: Readonly<Record<LabelNoun, (found: FoundByCode) => boolean | Promise<boolean>>> = {
  tool: openTool,
  station: openSheet,
  fixture: openSheet,
  place: openServingName,
}

/**
 * Opens what a code stands for: a tool is taken in hand on the rack, a station or fixture shows its sheet, a place what belongs there.
 *
 * @param text a code as typed, or a mark as read
 * @returns or why nothing could be opened
 */
export const openCode = async (text: string): Promise<Result<null>> => {
  const answer = await findCode(text)
  if (!answer.ok) return answer
  const found = answer.value
  if (!(await openers[found.noun](found))) return failed(problem('noLongerThere'))
  say(`scan:opened.${found.noun}`, { code: found.code, name: found.name })
  return ok(null)
}

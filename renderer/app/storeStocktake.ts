import type { Result } from '../../geometry/result.ts'
import type { FoundByCode } from '../../main/contract/labels.ts'
import type { Stocktake } from '../../main/contract/work.ts'
import { say } from './store.ts'
import { change } from './storeRack.ts'

/** What is done at a stocktake; every change is said with its undo. */

/** Begins one, of a place with all in it, or of the whole rack. @param label of where */
export const beginStocktake = (placeId: string | null, label: string) => change('stocktake.begin', { placeId }, label)

export const endStocktake = ({ id, version, code }: Stocktake) => change('stocktake.end', { id, version }, code)

/** Notes that a tool is there. @param placeId where one stands; null: not said */
export const seeTool = async (
  { id: stocktakeId }: Stocktake,
  { id: toolId, code, name }: FoundByCode,
  placeId: string | null,
): Promise<Result<unknown>> => {
  const label = `${code} ${name}`
  const made = await change('stocktake.see', { stocktakeId, toolId, placeId }, label)
  if (made.ok && made.value.changeId === 0) say('stocktake:already', { label })
  return made
}

/** Lets a tool belong where it was found. */
export const moveTool = (toolId: string, placeId: string, label: string) =>
  change('tool.errand', { toolIds: [toolId], errand: { does: 'place', placeId } }, label)

import { closeSync, existsSync, fsyncSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'

/** The racks of a data folder: the demo workshop, and the user's own. */
const rackNames = ['demo', 'own'] as const
export type RackName = (typeof rackNames)[number]

const choiceSchema = z.strictObject({ rack: z.enum(rackNames) })

/** @returns the data file of a rack */
export const rackPath = (folder: string, rack: RackName): string => join(folder, `${rack}.db`)

const choicePath = (folder: string): string => join(folder, 'choice.json')

const readText = (path: string): unknown => {
  try {
    return JSON.parse(readFileSync(path, 'utf8'))
  } catch {
    return null
  }
}

/** @returns the rack opened last; without a readable note of it, the user's own if there is one, else the demo */
export const chosenRack = (folder: string): RackName => {
  const choice = choiceSchema.safeParse(readText(choicePath(folder)))
  if (choice.success) return choice.data.rack
  return existsSync(rackPath(folder, 'own')) ? 'own' : 'demo'
}

/** Notes which rack is open; the note is whole or not there, never half written. */
export const noteChoice = (folder: string, rack: RackName): void => {
  const unfinished = `${choicePath(folder)}.unfinished`
  const handle = openSync(unfinished, 'w')
  writeSync(handle, `${JSON.stringify({ rack })}\n`)
  fsyncSync(handle)
  closeSync(handle)
  renameSync(unfinished, choicePath(folder))
}

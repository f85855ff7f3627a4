import { closeSync, existsSync, fsyncSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'

/** The racks of a data folder: the demo workshop, and the user's own. */
const rackNames = ['demo', 'own'] as const
export type RackName = (typeof rackNames)[number]

/** What is kept of a data folder beside its racks. */
const choiceSchema = z.object({ rack: z.enum(rackNames).optional(), tourSeen: z.boolean().optional() })
type Choice = z.output<typeof choiceSchema>

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

const readChoice = (folder: string): Choice => {
  const choice = choiceSchema.safeParse(readText(choicePath(folder)))
  return choice.success ? choice.data : {}
}

/** @returns the rack opened last; without a readable note of it, the user's own if there is one, else the demo */
export const chosenRack = (folder: string): RackName =>
  readChoice(folder).rack ?? (existsSync(rackPath(folder, 'own')) ? 'own' : 'demo')

/** @returns whether the walk round the screens was taken or declined on this data folder, whichever rack was open */
export const wasTourSeen = (folder: string): boolean => readChoice(folder).tourSeen ?? false

/** Notes which rack is open, or that the walk round was seen; the note is whole or not there, never half written. */
export const noteChoice = (folder: string, noted: Choice): void => {
  const choice = { ...readChoice(folder), ...noted }
  const unfinished = `${choicePath(folder)}.unfinished`
  const handle = openSync(unfinished, 'w')
  writeSync(handle, `${JSON.stringify(choice)}\n`)
  fsyncSync(handle)
  closeSync(handle)
  renameSync(unfinished, choicePath(folder))
}

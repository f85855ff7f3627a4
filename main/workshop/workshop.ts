import { ok, type Problem, problem, type Result } from '../../geometry/result.ts'
import { backUpDaily } from '../backup/daily.ts'
import { createAccess } from '../database/access.ts'
import type { Desk } from '../database/desk.ts'
import { type OpenDatabase, openDatabase } from '../database/open.ts'
import { chosenRack, noteChoice, type RackName, rackPath } from './choice.ts'
import { fillDemo } from './demo.ts'

/** What a workshop needs from outside. */
interface WorkshopOptions {
  readonly dataDir: string
  readonly who: string
  now(): Date
  newId(): string
  log(line: string): void
}

/** The open data folder: one of its racks at a time. */
export interface Workshop {
  readonly desk: Desk
  rack(): RackName
  /** What the user should hear of the open rack, such as a damaged file that was moved aside. */
  notices(): readonly Problem[]
  open(rack: RackName): Promise<Result<null>>
  close(): Promise<void>
}

/** A failed backup must not keep anybody from working; it is told instead. */
const backUp = (options: WorkshopOptions, rack: RackName): readonly Problem[] => {
  try {
    backUpDaily(rackPath(options.dataDir, rack), options.now())
    return []
  } catch (error) {
    return [problem('backupFailed', '', { detail: error instanceof Error ? error.message : String(error) })]
  }
}

const deskOf = (options: WorkshopOptions, first: OpenDatabase): Desk => ({
  access: createAccess(first),
  now: options.now,
  newId: options.newId,
  who: options.who,
})

/** @returns a rack's file, open; the demo is filled in before anybody else can write to it */
const openRack = async (options: WorkshopOptions, rack: RackName): Promise<Result<OpenDatabase>> => {
  const opened = openDatabase(rackPath(options.dataDir, rack), { now: options.now(), log: options.log })
  if (!opened.ok || rack !== 'demo') return opened
  const filled = await fillDemo(deskOf(options, opened.value))
  if (filled.ok) return opened
  await opened.value.close()
  return filled
}

const workshopOf = (options: WorkshopOptions, first: OpenDatabase, firstRack: RackName): Workshop => {
  const desk = deskOf(options, first)
  let current = firstRack
  let notices = [...first.notices, ...backUp(options, firstRack)]
  const open = async (rack: RackName): Promise<Result<null>> => {
    if (rack === current) return ok(null)
    const opened = await desk.access.replace(() => openRack(options, rack))
    if (!opened.ok) return opened
    current = rack
    notices = [...opened.value.notices, ...backUp(options, rack)]
    noteChoice(options.dataDir, rack)
    return ok(null)
  }
  return { desk, rack: () => current, notices: () => notices, open, close: desk.access.close }
}

/**
 * Opens the rack that was open last, or on a first start the demo workshop, filled in.
 *
 * @returns the workshop, or why its file cannot be used; nothing is then left open
 */
export const openWorkshop = async (options: WorkshopOptions): Promise<Result<Workshop>> => {
  const rack = chosenRack(options.dataDir)
  const first = await openRack(options, rack)
  return first.ok ? ok(workshopOf(options, first.value, rack)) : first
}

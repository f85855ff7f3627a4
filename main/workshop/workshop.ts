import { failed, ok, type Problem, problem, type Result } from '../../geometry/result.ts'
import { backUpIfDue, isCopyDue } from '../backup/backUp.ts'
import { copyPath } from '../backup/copies.ts'
import { bringBeside, changePlaces, changePlacesBack, finishGoingBack } from '../backup/goBack.ts'
import { type Access, createAccess } from '../database/access.ts'
import type { Desk } from '../database/desk.ts'
import { faultText } from '../database/fault.ts'
import { networkShare } from '../database/networkShare.ts'
import { notOpened, type OpenDatabase, openDatabase } from '../database/open.ts'
import { speakHere } from '../settings/speakHere.ts'
import { chosenRack, noteChoice, type RackName, rackPath, wasTourSeen } from './choice.ts'
import { fillDemo } from './demo.ts'

/** What a workshop needs from outside. */
interface WorkshopOptions {
  readonly dataDir: string
  /** Left out: the one that was open last. */
  readonly rack?: RackName
  readonly who: string
  now(): Date
  newId(): string
  log(line: string): void
}

/** The open data folder: one of its racks at a time. */
export interface Workshop {
  readonly desk: Desk
  rack(): RackName
  /** The open data file. */
  path(): string
  /** What the user should hear of the open rack, such as a damaged file that was moved aside. */
  notices(): readonly Problem[]
  open(rack: RackName): Promise<Result<null>>
  /** Whether the walk round the screens was taken or declined, with any of the racks. */
  tourSeen(): boolean
  noteTourSeen(): void
  /** Puts a copy in the data file's place; the file that was there becomes a copy. Where that cannot be, all is as before. */
  goBack(copy: string): Promise<Result<null>>
  close(): Promise<void>
}

/** What may be told of a copy that was due, until the next one. */
const ofCopies: ReadonlySet<string> = new Set(['backupFailed', 'oldCopiesStay'])

/** The copies of one rack's file, made as they fall due. */
interface Copies {
  /** Whether one is due, by the clock and what is known of the last: nothing is read from the disk for it. */
  isDue(): boolean
  /** A failed copy must not keep anybody from working; it is told instead. */
  backUp(): readonly Problem[]
}

const copiesOf = (options: WorkshopOptions, rack: RackName): Copies => {
  let newest: Date | null = null
  return {
    isDue: () => isCopyDue(newest, options.now()),
    backUp: () => {
      try {
        const made = backUpIfDue(rackPath(options.dataDir, rack), options.now())
        newest = made.at
        return made.notices
      } catch (error) {
        return [problem('backupFailed', '', { detail: faultText(error) })]
      }
    },
  }
}

/** The same access, with something done after a change where it is due, in a turn of its own. */
const afterChanges = (access: Access, isDue: () => boolean, work: () => void): Access => ({
  ...access,
  write: async (change) => {
    const written = await access.write(change)
    if (written.ok && isDue()) await access.read(async () => work())
    return written
  },
})

const deskOf = (options: WorkshopOptions, access: Access): Desk => ({
  access,
  now: options.now,
  newId: options.newId,
  who: options.who,
})

/** What a file is given before anybody else can write to it. */
const fillIn = async (options: WorkshopOptions, rack: RackName, opened: OpenDatabase): Promise<Result<null>> => {
  await speakHere(opened.db)
  return rack === 'demo' ? fillDemo(deskOf(options, createAccess(opened))) : ok(null)
}

/** @returns a rack's file, open and filled in, or why it cannot be, whatever goes wrong */
const openRack = async (options: WorkshopOptions, rack: RackName): Promise<Result<OpenDatabase>> => {
  const path = rackPath(options.dataDir, rack)
  let opened: Result<OpenDatabase> | null = null
  try {
    finishGoingBack(path)
    opened = openDatabase(path, { now: options.now(), log: options.log })
    if (!opened.ok) return opened
    const filled = await fillIn(options, rack, opened.value)
    if (filled.ok) return opened
    await opened.value.close()
    return filled
  } catch (error) {
    if (opened?.ok) await opened.value.close()
    return failed(notOpened(error, path))
  }
}

/** Changes places and opens what is there then; what cannot be opened goes out again. @returns the file that came, or why it is still the old one */
const placesChanged = async (
  path: string,
  aside: string,
  reopen: () => Promise<Result<OpenDatabase>>,
): Promise<Result<OpenDatabase>> => {
  try {
    changePlaces(path, aside)
  } catch (error) {
    return failed(problem('goingBackFailed', '', { detail: faultText(error) }))
  }
  const opened = await reopen()
  if (opened.ok) return opened
  return changePlacesBack(path, aside) ? failed(problem('goingBackUndone'), ...opened.problems) : reopen()
}

const workshopOf = (options: WorkshopOptions, first: OpenDatabase, firstRack: RackName): Workshop => {
  let current = firstRack
  let copies = copiesOf(options, firstRack)
  const share = networkShare(options.dataDir)
  const onShare = share === null ? [] : [problem('onNetworkShare', '', { folder: options.dataDir, share })]
  let notices = [...onShare, ...first.notices, ...copies.backUp()]
  const backUp = (): void => {
    notices = [...notices.filter(({ code }) => !ofCopies.has(code)), ...copies.backUp()]
  }
  const desk = deskOf(
    options,
    afterChanges(createAccess(first), () => copies.isDue(), backUp),
  )
  const path = (): string => rackPath(options.dataDir, current)
  const open = async (rack: RackName): Promise<Result<null>> => {
    if (rack === current) return ok(null)
    const opened = await desk.access.replace(() => openRack(options, rack))
    if (!opened.ok) return opened
    current = rack
    copies = copiesOf(options, rack)
    notices = [...onShare, ...opened.value.notices, ...copies.backUp()]
    noteChoice(options.dataDir, { rack })
    return ok(null)
  }
  const goBack = async (copy: string): Promise<Result<null>> => {
    try {
      bringBeside(path(), copy)
    } catch (error) {
      return failed(problem('goingBackFailed', '', { detail: faultText(error) }))
    }
    const reopen = () => openRack(options, current)
    const aside = copyPath(path(), 'beforeGoingBack', options.now())
    const opened = await desk.access.swap(() => placesChanged(path(), aside, reopen), reopen)
    return opened.ok ? ok(null) : opened
  }
  return {
    desk,
    rack: () => current,
    path,
    notices: () => notices,
    open,
    tourSeen: () => wasTourSeen(options.dataDir),
    noteTourSeen: () => noteChoice(options.dataDir, { tourSeen: true }),
    goBack,
    close: desk.access.close,
  }
}

/**
 * Opens the rack that is named, else the one that was open last, or on a first start the demo workshop, filled in.
 *
 * @returns the workshop, or why its file cannot be used; nothing is then left open
 */
export const openWorkshop = async (options: WorkshopOptions): Promise<Result<Workshop>> => {
  const rack = options.rack ?? chosenRack(options.dataDir)
  const first = await openRack(options, rack)
  return first.ok ? ok(workshopOf(options, first.value, rack)) : first
}

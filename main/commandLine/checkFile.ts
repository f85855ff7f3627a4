import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TFunction } from 'i18next'
import type { Result } from '../../geometry/result.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { lookInside } from '../backup/lookInside.ts'
import { kindOfFile } from '../contract/fileKinds.ts'
import { isZip } from '../inOut/bundle.ts'
import { withRack } from './openRack.ts'
import { backupKind } from './outFile.ts'
import { bringIn, faultLines } from './rackImport.ts'
import { readBytes } from './readBytes.ts'
import { readJob } from './readJob.ts'
import { readLesson } from './readLesson.ts'
import { textOf } from './readText.ts'
import { reasonLines } from './reasonLines.ts'

/** What a file was found to be: `data` is a rack's own file or a copy of it, `rack` what was taken out of one, or a table. */
type CheckedKind = 'job' | 'lesson' | 'rack' | 'data'

/** A file that was looked at. */
export interface Checked {
  readonly file: string
  /** Null: it could not be read. */
  readonly kind: CheckedKind | null
  /** Why it cannot be used, a line each; none: it can. */
  readonly reasons: readonly string[]
}

const entriesOf = (text: string): object => {
  try {
    return Object(JSON.parse(text)) as object
  } catch {
    return {}
  }
}

/** By what is in it; text that is no JSON by the file's name. */
const kindOf = (file: string, bytes: Uint8Array): CheckedKind => {
  const beginning = Buffer.from(bytes.subarray(0, backupKind.mark.length)).toString('latin1')
  if (beginning === backupKind.mark) return 'data'
  if (isZip(bytes)) return 'rack'
  const text = new TextDecoder().decode(bytes)
  const entries = entriesOf(text)
  if ('steps' in entries) return 'lesson'
  if ('form' in entries) return 'rack'
  const named = kindOfFile(file)
  if (text.trimStart().startsWith('{')) return named === 'lesson' ? 'lesson' : 'job'
  return named ?? 'rack'
}

type Reasons = readonly string[]

const reasonsOf = (t: TFunction, result: Result<unknown>): Reasons => (result.ok ? [] : reasonLines(t, result.problems))

/** Whether it can be ground, and not merely read. */
const checkJob = (t: TFunction, bytes: Uint8Array): Reasons => {
  const text = textOf(bytes)
  const job = text.ok ? readJob(text.value) : text
  return reasonsOf(t, job.ok ? solveJob(job.value) : job)
}

const checkLesson = (t: TFunction, bytes: Uint8Array): Reasons => {
  const text = textOf(bytes)
  return reasonsOf(t, text.ok ? readLesson(t, text.value) : text)
}

/** As bringing it into an empty rack would, so that what it refers to has to be in it. */
const checkRack = async (t: TFunction, bytes: Uint8Array): Promise<Reasons> => {
  const dataDir = mkdtempSync(join(tmpdir(), 'camberwright-check-'))
  try {
    const choice = { noun: null, dryRun: true, leaveOut: false }
    const look = await withRack({ dataDir, rack: 'own' }, { mayBegin: true }, (workshop) =>
      bringIn(workshop, choice, bytes),
    )
    return look.ok ? faultLines(t, look.value.value) : reasonLines(t, look.problems)
  } finally {
    rmSync(dataDir, { recursive: true, force: true })
  }
}

/** @returns what a file is and why it cannot be used, if it cannot */
export const checkFile = async (t: TFunction, file: string): Promise<Checked> => {
  const bytes = readBytes(file)
  if (!bytes.ok) return { file, kind: null, reasons: reasonLines(t, bytes.problems) }
  const kind = kindOf(file, bytes.value)
  const looks: Readonly<Record<CheckedKind, () => Reasons | Promise<Reasons>>> = {
    job: () => checkJob(t, bytes.value),
    lesson: () => checkLesson(t, bytes.value),
    rack: () => checkRack(t, bytes.value),
    data: () => reasonsOf(t, lookInside(file)),
  }
  return { file, kind, reasons: await looks[kind]() }
}

import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { FaultReport } from '../contract/reports.ts'
import { REPORT_NAME } from '../contract/reports.ts'
import { type Fault, reportText } from './reportText.ts'

/** Reports kept; the oldest goes when one more comes. */
const MOST_KEPT = 20

/** Reports of faults, a file each, in the data folder. They go nowhere from there unless somebody takes them. */
export interface Reports {
  /** Writes a fault down; one that was written down before is not written again. Never fails: a report must not be one fault more. */
  note(fault: Fault): void
  /** Newest first. */
  list(): readonly FaultReport[]
  remove(name: string): void
}

/** What of a report tells one fault from another: all but the line that says when. */
const faultIn = (text: string): string => text.slice(text.indexOf('\n'))

/** @param dataDir the data folder; the reports lie in a folder of it */
export const createReports = (dataDir: string, now: () => Date): Reports => {
  const folder = join(dataDir, 'reports')
  const names = (): readonly string[] =>
    readdirSync(folder)
      .filter((name) => REPORT_NAME.test(name))
      .sort()
      .reverse()

  const list = (): readonly FaultReport[] => {
    try {
      return names().map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }))
    } catch {
      return []
    }
  }

  const write = (text: string, at: Date): void => {
    mkdirSync(folder, { recursive: true })
    writeFileSync(join(folder, `${at.toISOString().replaceAll(/[:.]/g, '-')}.txt`), text)
    for (const name of names().slice(MOST_KEPT)) rmSync(join(folder, name), { force: true })
  }

  return {
    list,
    note: (fault) => {
      try {
        const at = now()
        const text = reportText(fault, at)
        if (!list().some((known) => faultIn(known.text) === faultIn(text))) write(text, at)
      } catch {
        return
      }
    },
    remove: (name) => rmSync(join(folder, name), { force: true }),
  }
}

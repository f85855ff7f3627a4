import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect } from 'vitest'
import type { runCommand } from '../../main/commandLine/command.ts'

/** A job that can be done, coarse enough to be quick. */
export const soundJob = {
  version: 1,
  blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up' },
  station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
  fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8 },
  aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5 },
  motion: { sweeps: 2 },
  grid: { across: 21, through: 5 },
}

/** @returns the sound job's text with the value at a dotted path replaced; undefined takes it out */
export const jobTextWith = (path: string, value: unknown): string => {
  const job: Record<string, unknown> = structuredClone(soundJob)
  const keys = path.split('.')
  const last = keys.pop() ?? ''
  const group = keys.reduce((at, key) => at[key] as Record<string, unknown>, job)
  group[last] = value
  return JSON.stringify(job)
}

/** As `jobTextWith`, with what stands there written letter for letter. */
export const jobTextSaying = (path: string, written: string): string =>
  jobTextWith(path, 'written here').replace('"written here"', written)

/** A folder for job files and cards. */
export const commandFolder = () => {
  const folder = mkdtempSync(join(tmpdir(), 'camberwright-command-'))
  return {
    folder,
    write: (name: string, content: string | Uint8Array): string => {
      writeFileSync(join(folder, name), content)
      return join(folder, name)
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}

/** What a refusal must never hold. */
const leaks = /NaN|Infinity|undefined|\n\s+at |Error|\[object|node:|\{\{|problems:|wanted\./

/** Nothing is printed as an answer, and of every reason one line: a field where there is one, then a sentence. */
export const expectRefused = (end: Awaited<ReturnType<typeof runCommand>>, says: RegExp, exitCode = 2): void => {
  expect([end.exitCode, end.output]).toEqual([exitCode, ''])
  expect(end.errors).toMatch(says)
  expect(end.errors).not.toMatch(leaks)
  for (const line of end.errors.trimEnd().split('\n')) expect(line).toMatch(/^(\S[^:]*: )?[A-Z“/][^\p{Cc}]*\.$/u)
}

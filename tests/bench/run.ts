import { execFileSync } from 'node:child_process'
import { cpus } from 'node:os'
import type { Row } from './clock.ts'
import { cutRows } from './cuts.ts'
import { engineRows } from './grinds.ts'
import { importRows } from './imports.ts'
import { movingRows } from './moving.ts'
import { rackRows } from './rack.ts'
import { startRows } from './starts.ts'

/**
 * `npm run bench [-- --full]`: times as ratios against a reference in the same run, as a table. With `--full` the solid
 * kernel's wheel has 1024 facets, and a hundred thousand tools are brought in and asked for, which takes about a minute.
 * `npm run bench -- starts moving` prints these parts alone.
 */
const QUICK_FACETS = 256
const FULL_FACETS = 1024
const facets = process.argv.includes('--full') ? FULL_FACETS : QUICK_FACETS

const QUICK_TOOLS = 10_000
const FULL_TOOLS = 100_000
const tools = process.argv.includes('--full') ? FULL_TOOLS : QUICK_TOOLS

const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim()
const machine = `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores`
console.log(`${machine}; Node ${process.version}; commit ${commit}; ${new Date().toISOString().slice(0, 10)}\n`)
const parts: Readonly<Record<string, () => readonly Row[] | Promise<readonly Row[]>>> = {
  engine: engineRows,
  cuts: () => cutRows(facets),
  imports: () => importRows(tools),
  rack: () => rackRows(tools),
  starts: startRows,
  moving: movingRows,
}
const asked = process.argv.filter((word) => word in parts)
for (const name of asked.length > 0 ? asked : Object.keys(parts))
  for (const { what, took, against } of (await parts[name]?.()) ?? []) console.log(`| ${what} | ${took} | ${against} |`)

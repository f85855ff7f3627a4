import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..', '..')

/** Longer than any gate takes on a slow machine: one that takes this long hangs. */
const HUNG_MS = 900_000
/** Room for the output of a gate in which everything fails (bytes). */
const MOST_OUTPUT_BYTES = 256e6

/** What a finished command left. */
export interface Finished {
  readonly ok: boolean
  readonly output: string
}

/** Runs a command of the project's, found by npm's path, to its end, without input. */
export const finish = (
  command: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Finished => {
  const { status, stdout, stderr, error } = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
    timeout: HUNG_MS,
    maxBuffer: MOST_OUTPUT_BYTES,
    env: { ...process.env, ...env },
    // npm's commands are scripts on Windows.
    shell: process.platform === 'win32',
  })
  return { ok: status === 0, output: [stdout, stderr, error?.message].filter(Boolean).join('\n') }
}

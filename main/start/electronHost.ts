import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { StartOptions } from './options.ts'
import { askedToStop } from './stopping.ts'

/** A fetch over a slow line gets this long (100 MB at 350 kB/s); where it is refused it fails within a second. */
const FETCH_MS = 300_000
/** A window that ends badly sooner than this never opened: libraries or rights are missing. */
const OPENING_MS = 10_000

/** How a try at the desktop window ended. */
export type ElectronEnd = 'closed' | 'notFetched' | 'endedAtOnce'

/** @returns the path of Electron's binary, or null where it has not been fetched */
export const electronBinary = (root: string): string | null => {
  const folder = join(root, 'node_modules', 'electron')
  try {
    const binary = join(folder, 'dist', readFileSync(join(folder, 'path.txt'), 'utf8'))
    return existsSync(binary) ? binary : null
  } catch {
    return null
  }
}

/** Fetches the binary by the package's own installer, which checks it against sums that came with the package. */
export const fetchElectron = async (root: string): Promise<string | null> => {
  const installer = join(root, 'node_modules', 'electron', 'install.js')
  if (!existsSync(installer)) return null
  const child = spawn(process.execPath, [installer], { cwd: root, stdio: 'ignore', timeout: FETCH_MS })
  await once(child, 'exit').catch(() => undefined)
  return electronBinary(root)
}

/** Editors set this for their own ends; with it Electron would open no window. */
const withoutNodeMode = ({ ELECTRON_RUN_AS_NODE: _, ...env }: NodeJS.ProcessEnv): NodeJS.ProcessEnv => env

/** What the window is opened on. */
type Shown = Pick<StartOptions, 'dataDir' | 'files'>

const spawnElectron = (binary: string, root: string, { dataDir, files }: Shown): ChildProcess => {
  // The engine's sandbox refuses to run for root.
  const unboxed = process.getuid?.() === 0 ? ['--no-sandbox'] : []
  return spawn(binary, [...unboxed, root, `--data=${dataDir}`, ...files], {
    stdio: 'inherit',
    env: withoutNodeMode(process.env),
  })
}

/** @returns the code a process ended with; null where it never ran or was killed */
const exitCodeOf = (child: ChildProcess): Promise<number | null> =>
  once(child, 'exit').then(
    ([code]: (number | null)[]) => code ?? null,
    () => null,
  )

/** Runs the desktop window until it is closed. */
export const runElectron = async (binary: string, root: string, shown: Shown): Promise<ElectronEnd> => {
  const startedMs = performance.now()
  const child = spawnElectron(binary, root, shown)
  let isStopping = false
  void askedToStop().then((why) => {
    isStopping = true
    // The window closes its data at either; this process waits for it.
    if (why === 'ended') child.kill()
  })
  const code = await exitCodeOf(child)
  const isEarly = performance.now() - startedMs < OPENING_MS
  return code !== 0 && isEarly && !isStopping ? 'endedAtOnce' : 'closed'
}

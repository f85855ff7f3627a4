import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'

/** A running loopback host on a data folder of its own. */
export interface HostProcess {
  /** Address with its single-use code. */
  readonly startAddress: string
  readonly dataDir: string
  stop(): Promise<void>
}

const firstLine = async (child: ChildProcess): Promise<string> => {
  if (child.stdout === null) throw new Error('the host has no output')
  for await (const line of createInterface({ input: child.stdout })) return line
  throw new Error('the host ended before it printed its address')
}

/** Starts a host in a process of its own, as a user's would be. */
export const startHostProcess = async (): Promise<HostProcess> => {
  const dataDir = await mkdtemp(join(tmpdir(), 'camberwright-'))
  const child = spawn(process.execPath, [join(import.meta.dirname, 'host.ts'), dataDir], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  const startAddress = await firstLine(child)
  return {
    startAddress,
    dataDir,
    stop: async () => {
      child.stdin?.end()
      if (child.exitCode === null) await once(child, 'exit')
      await rm(dataDir, { recursive: true, force: true })
    },
  }
}

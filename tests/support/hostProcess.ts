import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'

/** A running loopback host on a data folder of its own. */
export interface HostProcess {
  readonly pid: number
  /** Puts the demo workshop back as it was. @returns an address with its single-use code */
  freshAddress(): Promise<string>
  stop(): Promise<void>
}

/** Asks with a line, and waits for the line that answers. */
const asker = ({ stdin, stdout }: ChildProcess): (() => Promise<string>) => {
  if (!stdin || !stdout) throw new Error('the host has no input or no output')
  const lines = createInterface({ input: stdout })[Symbol.asyncIterator]()
  return async () => {
    stdin.write('\n')
    const { value, done } = await lines.next()
    if (done) throw new Error('the host ended before it printed its address')
    return value
  }
}

/** Starts a host in a process of its own, as a user's would be. */
export const startHostProcess = async (): Promise<HostProcess> => {
  const dataDir = await mkdtemp(join(tmpdir(), 'camberwright-'))
  const child = spawn(process.execPath, [join(import.meta.dirname, 'host.ts'), dataDir], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  return {
    pid: child.pid ?? 0,
    freshAddress: asker(child),
    stop: async () => {
      child.stdin?.end()
      if (child.exitCode === null) await once(child, 'exit')
      await rm(dataDir, { recursive: true, force: true })
    },
  }
}

import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'

const folder = mkdtempSync(join(tmpdir(), 'camberwright-process-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('npm start', () => {
  const start = join(import.meta.dirname, '..', '..', 'main', 'start.ts')

  it('says what is wrong with its options, in a sentence, and starts nothing', () => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [start, '--port', 'many'], { encoding: 'utf8' })
    expect([status, stdout]).toEqual([1, ''])
    expect(stderr).toBe('“many” is no port. Write a number from 0 to 65535; 0 takes any free one.\n')
  })

  it('says what it takes', () => {
    const { status, stdout } = spawnSync(process.execPath, [start, '--help'], { encoding: 'utf8' })
    expect(status).toBe(0)
    for (const option of ['--host', '--data', '--port', '--address']) expect(stdout).toContain(option)
  })
})

const script = join(import.meta.dirname, 'loopbackProcess.ts')
const dataDir = join(folder, 'data')

const direct = (): ChildProcess => spawn(process.execPath, [script, dataDir], { stdio: ['ignore', 'pipe', 'inherit'] })

/** As npm does it: through a shell, which alone is told to end. */
const throughShell = (): ChildProcess =>
  spawn('sh', ['-c', `"${process.execPath}" "${script}" "${dataDir}"; :`], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, npm_lifecycle_event: 'start' },
  })

/** Runs a host until its address is printed, stops it, and waits until it has let go of its output. */
const outputOf = async (child: ChildProcess, signal: NodeJS.Signals): Promise<string> => {
  let output = ''
  child.stdout?.on('data', (part) => {
    output += part
    if (/start\?code=.*\n/.test(String(part))) child.kill(signal)
  })
  await once(child, 'close')
  return output
}

describe('the loopback host in its own process', () => {
  it.each([
    ['SIGINT', direct, 0],
    ['SIGTERM', direct, 0],
    ['SIGHUP', direct, 0],
    ['SIGTERM', throughShell, null],
  ] as const)('stops cleanly at %s, and gives the folder to the next', async (signal, begin, code) => {
    const child = begin()
    expect(await outputOf(child, signal)).toMatch(
      /^Open this address in a browser on this machine.*\nhttp:\/\/127\.0\.0\.1:\d+\/start\?code=[\w-]{43}\nCamberwright has stopped; everything is saved\.\n$/,
    )
    expect(child.exitCode).toBe(code)
    expect(readdirSync(dataDir).sort()).toEqual(['backups', 'demo.db', 'inUse.lock'])
  })
})

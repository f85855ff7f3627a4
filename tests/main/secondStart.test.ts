import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Readable } from 'node:stream'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { MOST_WRONG_CODES } from '../../main/loopback/admission.ts'
import { runLoopbackHost } from '../../main/start/loopbackHost.ts'
import type { StartOptions } from '../../main/start/options.ts'
import { askRunning, noteRunning } from '../../main/start/running.ts'

const dataDir = mkdtempSync(join(tmpdir(), 'camberwright-second-'))
const script = join(import.meta.dirname, 'loopbackProcess.ts')
const ADDRESS = /http:\/\/127\.0\.0\.1:(\d+)\/start\?code=[\w-]{43}/

let first: ChildProcess
let address = ''
let cookie = ''

const admitted = async (at: string): Promise<string | null> =>
  (await fetch(at, { redirect: 'manual' })).headers.get('set-cookie')?.split(';')[0] ?? null

beforeAll(async () => {
  first = spawn(process.execPath, [script, dataDir], { stdio: ['ignore', 'pipe', 'inherit'] })
  while (address === '') {
    const [part] = await once(first.stdout as Readable, 'data')
    address = ADDRESS.exec(String(part))?.[0] ?? ''
  }
})
afterAll(async () => {
  first.kill('SIGTERM')
  if (first.exitCode === null) await once(first, 'exit')
  expect(existsSync(join(dataDir, 'running.json'))).toBe(false)
  rmSync(dataDir, { recursive: true, force: true })
})

const second = async (more: Partial<StartOptions> = {}) => {
  const said: string[] = []
  const options = { host: 'browser', dataDir, port: 0, addressOnly: true, help: false, files: [], ...more } as const
  const end = await runLoopbackHost('.', options, (key, params) => void said.push(`${key} ${params?.address ?? ''}`))
  return { end, said }
}

describe('a second start on the same data', () => {
  it('says that it is open already, gives a fresh address that works once, and ends well', async () => {
    const { end, said } = await second()
    expect(end.ok).toBe(true)
    expect(said).toHaveLength(1)
    const given = ADDRESS.exec(said[0] as string)?.[0] as string
    expect(await admitted(given)).toMatch(/^camberwright-\d+=/)
    expect(await admitted(given)).toBe(null)
    expect(new URL(given).port).toBe(new URL(address).port)
  })

  it('is the way back in once a hundred wrong codes have made the waiting one void', async () => {
    const waiting = await askRunning(dataDir)
    for (let i = 0; i < MOST_WRONG_CODES; i++) await fetch(`${new URL(address).origin}/start?code=${i}`)
    expect(await admitted(String(waiting))).toBe(null)
    cookie = (await admitted(String(await askRunning(dataDir)))) ?? ''
    expect(cookie).not.toBe('')
  })

  it('with a file to open says where it has to be opened, and gives no address', async () => {
    const { end, said } = await second({ files: ['/srv/a.cwjob'] })
    expect(end).toMatchObject({ ok: false, problems: [{ code: 'folderInUse' }] })
    expect(said).toEqual([])
  })

  it.skipIf(process.platform === 'win32')('reads what is the user’s alone to read', () => {
    expect(statSync(join(dataDir, 'running.json')).mode & 0o777).toBe(0o600)
  })

  it('gets no address with another key, nor does a page of another origin or a form', async () => {
    const { origin } = new URL(address)
    for (const headers of [{}, { authorization: 'Bearer ' }, { authorization: `Bearer ${'A'.repeat(43)}` }, { cookie }])
      expect(
        (await fetch(`${origin}/again`, { method: 'POST', headers: headers as Record<string, string> })).status,
      ).toBe(401)
    expect((await fetch(`${origin}/again`, { headers: { cookie } })).status).toBe(404)
  })
})

it('a port that is taken is said, and nothing is left behind that says a program runs', async () => {
  const other = mkdtempSync(join(tmpdir(), 'camberwright-port-'))
  const { end } = await second({ dataDir: other, port: Number(new URL(address).port) })
  expect(end).toMatchObject({ ok: false, problems: [{ code: 'startPortTaken', path: '--port' }] })
  expect(existsSync(join(other, 'running.json'))).toBe(false)
  rmSync(other, { recursive: true, force: true })
})

it.each([
  ['nobody', 500, ''],
  ['a program that hands out another address', 200, 'http://evil.invalid/start?code=x'],
  ['a program that answers without end', 200, 'n'.repeat(100_000)],
])('word left of a port that %s has now leads nowhere', async (_, status, body) => {
  const folder = mkdtempSync(join(tmpdir(), 'camberwright-stale-'))
  const stranger = createServer((_request, response) => response.writeHead(status).end(body)).listen(0, '127.0.0.1')
  await once(stranger, 'listening')
  noteRunning(folder, { port: (stranger.address() as AddressInfo).port, key: 'k' })
  expect(await askRunning(folder)).toBe(null)
  stranger.close()
  expect(await askRunning(folder)).toBe(null)
  for (const text of ['', '{', '{"port":0,"key":"k"}', '{"port":"80"}', '[]']) {
    writeFileSync(join(folder, 'running.json'), text)
    expect(await askRunning(folder)).toBe(null)
  }
  rmSync(folder, { recursive: true, force: true })
})

describe.skipIf(process.platform === 'win32')('sleep', () => {
  it('a call made while the machine sleeps is answered when it wakes, and the open stream of events goes on', async () => {
    const { origin } = new URL(address)
    const headers = { cookie, origin, 'content-type': 'application/json' }
    const call = (name: string, input: unknown) =>
      fetch(`${origin}/call`, { method: 'POST', headers, body: JSON.stringify({ callId: name, name, input }) })
    const events = await fetch(`${origin}/events`, { headers: { cookie } })
    const reader = events.body?.pipeThrough(new TextDecoderStream()).getReader()
    await reader?.read()
    first.kill('SIGSTOP')
    let woken = false
    const answered = call('place.add', { name: 'Drawer' }).then(async (response) => {
      expect(woken).toBe(true)
      return response.json()
    })
    await new Promise((done) => setTimeout(done, 300))
    woken = true
    first.kill('SIGCONT')
    expect(await answered).toMatchObject({ ok: true })
    expect((await reader?.read())?.value).toContain('"place"')
    await reader?.cancel()
  })
})

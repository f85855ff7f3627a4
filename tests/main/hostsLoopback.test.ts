import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { networkInterfaces, tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ok } from '../../geometry/result.ts'
import type { HostEvent } from '../../main/contract/calls.ts'
import { MOST_BODY_BYTES } from '../../main/loopback/body.ts'
import { type LoopbackHost, startLoopbackHost } from '../../main/serve.ts'
import type { ServiceClient } from '../../main/serviceClient.ts'
import { type RawAnswer, rawRequest } from './rawRequest.ts'

const BLOB = '3f0c5c1e-58c1-4f0a-9d0c-1c2f8a4b7e11'
const asked: unknown[] = []
let tell: (event: HostEvent) => void = () => undefined

/** Services that answer what they were asked. */
const services: ServiceClient = {
  problems: () => [],
  call: async (name, input, callId) => {
    asked.push({ name, input, callId })
    return ok({ name, input })
  },
  cancel: (callId) => void asked.push({ cancelled: callId }),
  onEvent: (listener) => {
    tell = listener
    return () => undefined
  },
  blob: async (id) =>
    id === BLOB ? { bytes: new Uint8Array([1, 2, 3]), fileName: 'card 1.pdf', mediaType: 'application/pdf' } : null,
  close: async () => undefined,
}

const folder = mkdtempSync(join(tmpdir(), 'camberwright-page-'))
const pageFolder = join(folder, 'page')
let host: LoopbackHost
let own = ''
let cookie = ''

const get = (path: string, ...headers: readonly string[]): Promise<RawAnswer> =>
  rawRequest(host.port, [`GET ${path} HTTP/1.1`, `Host: ${own}`, ...headers])

const getAdmitted = (path: string): Promise<RawAnswer> => get(path, `Cookie: ${cookie}`)

const post = (path: string, body: string, ...headers: readonly string[]): Promise<RawAnswer> =>
  rawRequest(
    host.port,
    [
      ...[`POST ${path} HTTP/1.1`, `Host: ${own}`, `Cookie: ${cookie}`, `Content-Length: ${Buffer.byteLength(body)}`],
      ...(headers.length > 0 ? headers : [`Origin: http://${own}`, 'Content-Type: application/json']),
    ],
    body,
  )

const startPath = (): string => host.newStartAddress().replace(/^http:\/\/[^/]+/, '')

beforeAll(async () => {
  mkdirSync(join(pageFolder, 'assets'), { recursive: true })
  writeFileSync(join(pageFolder, 'index.html'), '<!doctype html><title>page</title>')
  writeFileSync(join(pageFolder, 'assets', 'a.js'), 'export {}')
  writeFileSync(join(pageFolder, '.secret.js'), 'secret')
  writeFileSync(join(pageFolder, 'notes.txt'), 'secret')
  writeFileSync(join(folder, 'secret.js'), 'secret')
  symlinkSync(join(folder, 'secret.js'), join(pageFolder, 'link.js'))
  host = await startLoopbackHost({ services, pageFolder, port: 0 })
  own = `127.0.0.1:${host.port}`
  cookie = /set-cookie: ([^;]+)/.exec((await get(startPath())).head)?.[1] ?? ''
})

afterAll(async () => {
  await host.close()
  rmSync(folder, { recursive: true, force: true })
})

describe('whom a request is addressed to', () => {
  const hostile = (port: number): readonly (readonly string[])[] => [
    [],
    ['Host:'],
    ['Host: 127.0.0.1'],
    ['Host: localhost'],
    [`Host: 127.0.0.1:${port + 1}`],
    ['Host: 127.0.0.1:80'],
    [`Host: 127.0.0.1:${port}.`],
    [`Host: 127.0.0.1.:${port}`],
    [`Host: 127.0.0.1:0${port}`],
    [`Host: 127.1:${port}`],
    [`Host: 0.0.0.0:${port}`],
    [`Host: 2130706433:${port}`],
    [`Host: [::1]:${port}`],
    [`Host: [::ffff:127.0.0.1]:${port}`],
    [`Host: LOCALHOST:${port}`],
    [`Host: localhost.:${port}`],
    [`Host: evil.invalid:${port}`],
    [`Host: 127.0.0.1.evil.invalid:${port}`],
    [`Host: evil.invalid#127.0.0.1:${port}`],
    [`Host: user@127.0.0.1:${port}`],
    [`Host: http://127.0.0.1:${port}`],
    [`Host: 127.0.0.1:${port}, evil.invalid`],
    [`Host: 127.0.0.1:${port}`, 'Host: evil.invalid'],
    [`Host: evil.invalid`, `Host: 127.0.0.1:${port}`],
    [`Host: evil.invalid`, `X-Forwarded-Host: 127.0.0.1:${port}`],
  ]

  it.each(Array.from({ length: hostile(1).length }, (_, i) => [hostile(0)[i]?.join(' + ') ?? '', i] as const))(
    'refuses “%s”, even with the cookie and a good code',
    async (_, i) => {
      const code = startPath()
      const headers = hostile(host.port)[i] ?? []
      const answers = await Promise.all(
        ['/', code].map((path) => rawRequest(host.port, [`GET ${path} HTTP/1.1`, ...headers, `Cookie: ${cookie}`])),
      )
      for (const { status, head, body } of answers) {
        expect([400, 403]).toContain(status)
        expect(head).not.toMatch(/set-cookie/i)
        expect(body).not.toContain('<title>')
      }
      expect((await get(code)).status).toBe(303)
    },
  )

  it.each(['127.0.0.1', 'localhost'])('answers to %s', async (name) => {
    const lines = ['GET / HTTP/1.1', `Host: ${name}:${host.port}`, `Cookie: ${cookie}`]
    expect((await rawRequest(host.port, lines)).status).toBe(200)
  })

  it('refuses HTTP/1.0 without a host, and a whole address as for a proxy', async () => {
    expect((await rawRequest(host.port, ['GET / HTTP/1.0', `Cookie: ${cookie}`])).status).toBe(403)
    const whole = [`GET http://evil.invalid/ HTTP/1.1`, `Host: ${own}`, `Cookie: ${cookie}`]
    expect((await rawRequest(host.port, whole)).status).toBe(400)
  })

  it('listens on no address of the network', async () => {
    const others = Object.values(networkInterfaces())
      .flatMap((all) => all ?? [])
      .filter(({ internal, family }) => !internal && family === 'IPv4')
    for (const { address } of others) {
      const reached = await new Promise((resolve) => {
        const socket = connect(host.port, address, () => resolve(true)).on('error', () => resolve(false))
        socket.setTimeout(1000, () => resolve(false))
      })
      expect(reached).toBe(false)
    }
  })
})

describe('who may come in', () => {
  it('lets a code in once, with a strict cookie named by port', async () => {
    const path = startPath()
    const first = await get(path)
    expect(first.status).toBe(303)
    expect(first.head).toMatch(/location: \/\r\n/i)
    expect(first.head).toMatch(
      new RegExp(`set-cookie: camberwright-${host.port}=[\\w-]{43}; HttpOnly; SameSite=Strict; Path=/\\r\\n`, 'i'),
    )
    const second = await get(path)
    expect(second.status).toBe(401)
    expect(second.head).not.toMatch(/set-cookie/i)
  })

  it('takes back a code when a newer one is made', async () => {
    const [older, newer] = [startPath(), startPath()]
    expect((await get(older)).status).toBe(401)
    expect((await get(newer)).status).toBe(303)
  })

  it.each(['/start', '/start?code=', '/start?code=wrong', '/start?code=null', '/start?CODE=x'])(
    'refuses %s',
    async (path) => {
      expect((await get(path)).status).toBe(401)
    },
  )

  it('does not spend the code on a look ahead', async () => {
    const path = startPath()
    expect((await rawRequest(host.port, [`HEAD ${path} HTTP/1.1`, `Host: ${own}`])).status).toBe(401)
    expect((await get(path)).status).toBe(303)
  })

  it.each([
    ['no cookie', () => ''],
    ['an empty one', () => `camberwright-${host.port}=`],
    ['a wrong one', () => `camberwright-${host.port}=${'A'.repeat(43)}`],
    ['one of another port', () => cookie.replace(String(host.port), String(host.port + 1))],
    ['part of the right one', () => cookie.slice(0, -1)],
  ])('answers 401 with a plain page to %s', async (_, made) => {
    for (const path of ['/', '/assets/a.js', '/events', `/blob/${BLOB}`, '/nowhere']) {
      const answer = await get(path, ...(made() === '' ? [] : [`Cookie: ${made()}`]))
      expect(answer.status).toBe(401)
      expect(answer.body).toMatch(/^This page opens only with the address/)
    }
  })

  it('finds its cookie among others', async () => {
    expect((await get('/', `Cookie: other=1; ${cookie}; more=2`)).status).toBe(200)
  })
})

describe('what is handed out', () => {
  it('hands out the page with every guarding header', async () => {
    const { status, head, body } = await getAdmitted('/')
    expect(status).toBe(200)
    expect(body).toContain('<title>page</title>')
    expect(head).toMatch(/content-security-policy: default-src 'none'; script-src 'self';/i)
    expect(head).not.toMatch(/unsafe/i)
    expect(head).toMatch(/x-content-type-options: nosniff/i)
    expect(head).toMatch(/referrer-policy: no-referrer/i)
  })

  it.each([
    ...[
      '/../secret.js',
      '/..%2fsecret.js',
      '/%2e%2e/secret.js',
      '/assets/../../secret.js',
      '/assets/..%5c..%5csecret.js',
    ],
    ...['/..\\secret.js', '/./../secret.js', '/%252e%252e/secret.js', '//secret.js', '/assets//a.js', '/link.js'],
    ...['/.secret.js', '/notes.txt', '/assets', '/assets/', '/index.html%00.js', '/C:/secret.js', '/nowhere.js', '/%'],
  ])('hands out nothing for %s', async (path) => {
    const { status, body } = await getAdmitted(path)
    expect([400, 404]).toContain(status)
    expect(body).not.toContain('secret')
  })

  it('hands out a blob by its id, and nothing by another', async () => {
    const { status, head } = await getAdmitted(`/blob/${BLOB}`)
    expect(status).toBe(200)
    expect(head).toMatch(/content-type: application\/pdf/i)
    expect(head).toMatch(/content-disposition: inline; filename\*=UTF-8''card%201\.pdf/i)
    for (const id of ['', '..', BLOB.replace('3', '4'), `${BLOB}/x`])
      expect((await getAdmitted(`/blob/${id}`)).status).toBe(404)
  })

  it('passes on what the services tell', async () => {
    const controller = new AbortController()
    const response = await fetch(`http://${own}/events`, { headers: { cookie }, signal: controller.signal })
    const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader()
    await reader?.read()
    tell({ type: 'progress', callId: 'one', done: 0.5 })
    expect((await reader?.read())?.value).toBe('data: {"type":"progress","callId":"one","done":0.5}\n\n')
    controller.abort()
  })
})

describe('what may be asked', () => {
  const body = JSON.stringify({ callId: 'one', name: 'tool.list', input: { search: 'é' } })

  it('passes a call to the services and answers what they answer', async () => {
    const answer = await post('/call', body)
    expect(answer.status).toBe(200)
    expect(JSON.parse(answer.body)).toEqual({ ok: true, value: { name: 'tool.list', input: { search: 'é' } } })
    expect(asked.at(-1)).toEqual({ name: 'tool.list', input: { search: 'é' }, callId: 'one' })
    expect((await post('/cancel', '{"callId":"one"}')).status).toBe(200)
    expect(asked.at(-1)).toEqual({ cancelled: 'one' })
  })

  it.each([
    ['no origin', []],
    ['another origin', ['Origin: http://evil.invalid']],
    ['another port', ['Origin: http://127.0.0.1:1']],
    ['the other name', ['Origin: http://localhost:PORT']],
    ['null', ['Origin: null']],
    ['https', ['Origin: https://127.0.0.1:PORT']],
    ['two', ['Origin: http://127.0.0.1:PORT', 'Origin: http://evil.invalid']],
  ])('refuses a call with %s for its origin', async (_, origins) => {
    const before = asked.length
    const headers = [
      'Content-Type: application/json',
      ...origins.map((line) => line.replace('PORT', String(host.port))),
    ]
    expect((await post('/call', body, ...headers)).status).toBe(403)
    expect(asked.length).toBe(before)
  })

  it.each(['text/plain', 'application/x-www-form-urlencoded', 'application/jsonx', ''])(
    'refuses the media type “%s”',
    async (type) => {
      expect((await post('/call', body, `Origin: http://${own}`, `Content-Type: ${type}`)).status).toBe(415)
    },
  )

  it.each([
    ...[
      '',
      '{',
      'null',
      '[]',
      '{}',
      '{"callId":"","name":"a","input":1}',
      '{"callId":1,"name":"a"}',
      '['.repeat(100_000),
    ],
    ...[
      JSON.stringify({ callId: 'a', name: 'b', input: 1, more: 2 }),
      JSON.stringify({ callId: 'a', name: 'b'.repeat(201), input: 1 }),
    ],
  ])('refuses the body %#', async (text) => {
    expect((await post('/call', text)).status).toBe(400)
  })

  it('refuses a body over the limit, whether or not it says how long it is', async () => {
    const large = JSON.stringify({ callId: 'a', name: 'b', input: 'x'.repeat(MOST_BODY_BYTES) })
    const headers = { cookie, origin: `http://${own}`, 'content-type': 'application/json' }
    const told = await fetch(`http://${own}/call`, { method: 'POST', headers, body: large })
    expect(told.status).toBe(413)
    const untold = new Blob([large]).stream()
    const streamed = await fetch(`http://${own}/call`, {
      method: 'POST',
      headers,
      body: untold,
      duplex: 'half',
    } as RequestInit)
    expect(streamed.status).toBe(413)
  })

  it.each(['PUT', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE', 'PROPFIND'])('refuses %s', async (method) => {
    const lines = [`${method} /call HTTP/1.1`, `Host: ${own}`, `Cookie: ${cookie}`, 'Content-Length: 0']
    expect((await rawRequest(host.port, lines)).status).toBe(405)
  })

  it('knows nothing to post but calls and cancels', async () => {
    for (const path of ['/', '/start', '/blob', '/call/', '/call.html'])
      expect((await post(path, body)).status).toBe(404)
  })
})

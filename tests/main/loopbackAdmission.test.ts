import { connect } from 'node:net'
import { networkInterfaces } from 'node:os'
import { describe, expect, it } from 'vitest'
import { BLOB, cookie, get, host, onLoopbackHost, own, startPath } from './loopbackBench.ts'
import { rawRequest } from './rawRequest.ts'

onLoopbackHost()

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

import { describe, expect, it } from 'vitest'
import { MOST_FILE_BYTES } from '../../main/contract/transport.ts'
import { MOST_BODY_BYTES } from '../../main/loopback/body.ts'
import { asked, BLOB, cookie, getAdmitted, host, onLoopbackHost, own, post, tell } from './loopbackBench.ts'
import { rawRequest } from './rawRequest.ts'

onLoopbackHost()

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
  const body = JSON.stringify({ callId: 'one', name: 'tool.find', input: { search: 'é' } })

  it('passes a call to the services and answers what they answer', async () => {
    const answer = await post('/call', body)
    expect(answer.status).toBe(200)
    expect(JSON.parse(answer.body)).toEqual({ ok: true, value: { name: 'tool.find', input: { search: 'é' } } })
    expect(asked.at(-1)).toEqual({ name: 'tool.find', input: { search: 'é' }, callId: 'one' })
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

  it('takes a file in, from its own page alone and as plain bytes alone', async () => {
    const bytes = ['Content-Type: application/octet-stream']
    const taken = await post('/blob', 'abc', `Origin: http://${own}`, ...bytes)
    expect(JSON.parse(taken.body)).toEqual({ blobId: BLOB })
    expect(asked.at(-1)).toEqual({ put: [97, 98, 99] })
    const before = asked.length
    expect((await post('/blob', 'abc', ...bytes)).status).toBe(403)
    expect((await post('/blob', 'abc', `Origin: http://${own}`, 'Content-Type: text/plain')).status).toBe(415)
    const tooLong = [`POST /blob HTTP/1.1`, `Host: ${own}`, `Origin: http://${own}`, ...bytes]
    const claimed = [...tooLong, `Content-Length: ${MOST_FILE_BYTES + 1}`]
    expect((await rawRequest(host.port, [...claimed, `Cookie: ${cookie}`], 'abc')).status).toBe(413)
    expect((await rawRequest(host.port, [...tooLong, 'Content-Length: 3'], 'abc')).status).toBe(401)
    expect(asked.length).toBe(before)
  })

  it.each(['PUT', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE', 'PROPFIND'])('refuses %s', async (method) => {
    const lines = [`${method} /call HTTP/1.1`, `Host: ${own}`, `Cookie: ${cookie}`, 'Content-Length: 0']
    expect((await rawRequest(host.port, lines)).status).toBe(405)
  })

  it('knows nothing to post but calls and cancels', async () => {
    for (const path of ['/', '/start', '/blob/', '/call/', '/call.html'])
      expect((await post(path, body)).status).toBe(404)
  })
})

import { connect, type Socket } from 'node:net'
import { describe, expect, it } from 'vitest'
import { cookie, get, getAdmitted, host, onLoopbackHost, own } from './loopbackBench.ts'
import { rawRequest } from './rawRequest.ts'

onLoopbackHost({ headersTimeout: 300, requestTimeout: 600, connectionsCheckingInterval: 100 })

/** Sends some bytes and then only dribbles. @returns the status line the host cuts it off with, or nothing */
const dribble = (text: string): Promise<string> =>
  new Promise((resolve) => {
    let answered = ''
    const socket: Socket = connect(host.port, '127.0.0.1')
    const drops = setInterval(() => socket.writable && socket.write('a'), 50)
    socket.on('data', (part) => {
      answered += part
    })
    socket.on('error', () => undefined)
    socket.on('close', () => {
      clearInterval(drops)
      resolve(answered.split('\r\n')[0] ?? '')
    })
    socket.write(text)
  })

const postLines = () => [
  ...['POST /call HTTP/1.1', `Host: ${own}`, `Cookie: ${cookie}`, `Origin: http://${own}`],
  'Content-Type: application/json',
]

describe('a client that takes its time', () => {
  it.each([
    ['in the head of a request', () => `GET / HTTP/1.1\r\nHost: ${own}\r\nX: `],
    ['in the body of a call', () => `${postLines().join('\r\n')}\r\nContent-Length: 100000\r\n\r\n{`],
  ])('is cut off %s, and holds up nobody meanwhile', async (_, begun) => {
    const slow = Array.from({ length: 20 }, () => dribble(begun()))
    expect((await getAdmitted('/')).status).toBe(200)
    expect(new Set(await Promise.all(slow))).toEqual(new Set(['HTTP/1.1 408 Request Timeout']))
  })
})

describe('what no browser sends', () => {
  it('a head beyond all size is refused', async () => {
    expect((await get('/', ...Array.from({ length: 3000 }, () => 'a: b'))).status).toBe(431)
  })

  it('a length in two ways is refused', async () => {
    const lines = [...postLines(), 'Content-Length: 5', 'Transfer-Encoding: chunked']
    expect((await rawRequest(host.port, lines, '0\r\n\r\n')).status).toBe(400)
  })

  it('bytes of another protocol are refused', async () => {
    expect((await rawRequest(host.port, ['\x16\x03\x01\x02'])).status).toBe(400)
  })

  it('a way through to elsewhere is not made', async () => {
    expect((await rawRequest(host.port, ['CONNECT evil.invalid:80 HTTP/1.1', `Host: ${own}`])).body).toBe('')
  })
})

it('answers beside a thousand connections that say nothing', async () => {
  const silent = Array.from({ length: 1000 }, () => connect(host.port, '127.0.0.1').on('error', () => undefined))
  const statuses = await Promise.all(Array.from({ length: 50 }, () => getAdmitted('/').then(({ status }) => status)))
  expect(new Set(statuses)).toEqual(new Set([200]))
  for (const socket of silent) socket.destroy()
})

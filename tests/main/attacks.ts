import { MOST_WRONG_CODES } from '../../main/loopback/admission.ts'
import { BLOB, cookie, host, own, startPath } from './loopbackBench.ts'

/** One request that must come to nothing. */
export interface Attack {
  readonly lines: readonly string[]
  readonly body?: string
}

const asOwner = (): readonly string[] => [`Host: ${own}`, `Cookie: ${cookie}`]
const get = (path: string, ...lines: readonly string[]): Attack => ({ lines: [`GET ${path} HTTP/1.1`, ...lines] })
const call = JSON.stringify({ callId: 'attack', name: 'tool.find', input: {} })
const post = (body: string, ...lines: readonly string[]): Attack => ({
  lines: ['POST /call HTTP/1.1', `Content-Length: ${Buffer.byteLength(body)}`, ...lines],
  body,
})
const asJson = 'Content-Type: application/json'
const fromOwn = (): readonly string[] => [...asOwner(), `Origin: http://${own}`]

const hostNames = (): readonly string[] => {
  const { port } = host
  const beside = ['127.1', '127.0.1', '0.0.0.0', '0', '2130706433', '0x7f000001', '017700000001', '127.0.0.2', '[::1]']
  const named = [
    '[::ffff:127.0.0.1]',
    'LOCALHOST',
    'LocalHost',
    'localhost.',
    '127.0.0.1.',
    'a.localhost',
    'evil.invalid',
  ]
  const mixed = [
    '127.0.0.1.evil.invalid',
    'localhost.evil.invalid',
    'user@127.0.0.1',
    'evil.invalid#127.0.0.1',
    'xn--lcalhost-54a',
  ]
  return [
    ...[...beside, ...named, ...mixed].map((name) => `${name}:${port}`),
    ...['', '127.0.0.1', 'localhost', '127.0.0.1:', `127.0.0.1:0${port}`, `127.0.0.1:${port}.`, `127.0.0.1:+${port}`],
    ...[`127.0.0.1:${port + 1}`, `http://127.0.0.1:${port}`, `127.0.0.1:${port}, evil.invalid`, `127.0.0.1:${port}/`],
  ]
}

const origins = (): readonly string[] => [
  ...['http://evil.invalid', 'null', '', 'file://', 'http://127.0.0.1', `https://${own}`, `http://${own}/`],
  ...[`http://localhost:${host.port}`, `http://127.0.0.1:${host.port + 1}`, `http://${own}.evil.invalid`, own],
  ...[`http://user@${own}`, `HTTP://${own}`, `http://${own}, http://evil.invalid`, 'chrome-extension://abc'],
]

/** Ways up and dots and slashes in every writing. */
const ways = (): readonly string[] => {
  const ups = ['..', '%2e%2e', '.%2e', '%2E.', '%252e%252e', '..;', '%c0%ae%c0%ae', '%uff0e%uff0e', '...', '..%00']
  const slashes = ['/', '%2f', '%5c', '\\', '%252f', '%c0%af', '//']
  return [
    ...ups.flatMap((up) =>
      slashes.flatMap((slash) => [`/${up}${slash}secret.js`, `/assets/${up}${slash}${up}${slash}secret.js`]),
    ),
    ...[
      '/link.js',
      '/.secret.js',
      '/%2esecret.js',
      '/notes.txt',
      '/C:/secret.js',
      '/~/secret.js',
      '/file:///secret.js',
    ],
    ...[
      '/assets',
      '/assets/',
      '/./',
      '/assets/.',
      '/blob',
      '/blob/',
      `/blob/../${BLOB}`,
      `/blob/${BLOB}/`,
      `/blob/${BLOB}%00`,
    ],
  ]
}

const guess = (i: number): string => Buffer.alloc(32, i + 1).toString('base64url')

const bodies = [
  ...[
    '',
    '{',
    'null',
    '[]',
    '{}',
    '"a"',
    '['.repeat(50_000),
    '{"callId":1,"name":"a"}',
    '{"callId":"","name":"a","input":1}',
  ],
  ...[{ more: 2 }, { constructor: { prototype: {} } }, { prototype: 1 }, { toString: 1 }].map((more) =>
    JSON.stringify({ callId: 'a', name: 'b', input: 1, ...more }),
  ),
  ...['{"__proto__":{"callId":"a","name":"b","input":1}}', '{"constructor":{"prototype":{"isAdmitted":true}}}'],
]

/** What is tried, by its kind. Every attack of a kind that is not about the cookie has the right one. */
export const attacks = (): Readonly<Record<string, readonly Attack[]>> => ({
  'hosts of other names': hostNames().flatMap((name) =>
    ['/', startPath(), '/events'].map((path) => get(path, `Host: ${name}`, `Cookie: ${cookie}`)),
  ),
  'calls from other origins': origins().map((origin) => post(call, ...asOwner(), asJson, `Origin: ${origin}`)),
  'requests from other sites': ['cross-site', 'same-site', 'Same-Origin', ''].flatMap((site) => [
    ...['/', startPath(), `/blob/${BLOB}`, '/events'].map((path) => get(path, ...asOwner(), `Sec-Fetch-Site: ${site}`)),
    post(call, ...fromOwn(), asJson, `Sec-Fetch-Site: ${site}`),
  ]),
  'bodies that a form can send': ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', ''].map(
    (type) => post(call, ...fromOwn(), `Content-Type: ${type}`),
  ),
  'leave asked for other pages': ['/call', '/', '/blob'].map((path) => ({
    lines: [
      `OPTIONS ${path} HTTP/1.1`,
      ...asOwner(),
      'Origin: http://evil.invalid',
      'Access-Control-Request-Method: POST',
    ],
  })),
  'codes guessed': Array.from({ length: MOST_WRONG_CODES * 2 }, (_, i) =>
    get(`/start?code=${guess(i)}`, `Host: ${own}`),
  ),
  'cookies guessed': Array.from({ length: 200 }, (_, i) =>
    get('/', `Host: ${own}`, `Cookie: camberwright-${host.port}=${guess(i)}`),
  ),
  'keys of a second start guessed': Array.from({ length: 200 }, (_, i) => ({
    lines: ['POST /again HTTP/1.1', 'Content-Length: 0', ...asOwner(), `Authorization: Bearer ${guess(i)}`],
  })),
  'ways out of the page folder, lists of folders': ways().map((path) => get(path, ...asOwner())),
  'malformed and polluting bodies': bodies.map((body) => post(body, ...fromOwn(), asJson)),
  'bodies beyond the limit': [9e6, 1e12, Number.MAX_SAFE_INTEGER].map((length) => ({
    lines: ['POST /call HTTP/1.1', `Content-Length: ${length}`, ...fromOwn(), asJson],
    body: '{',
  })),
})

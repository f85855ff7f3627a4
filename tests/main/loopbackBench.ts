import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll } from 'vitest'
import { ok } from '../../geometry/result.ts'
import type { HostEvent } from '../../main/contract/events.ts'
import { type LoopbackHost, startLoopbackHost } from '../../main/serve.ts'
import type { ServiceClient } from '../../main/serviceClient.ts'
import { type RawAnswer, rawRequest } from './rawRequest.ts'

/** The one blob that is there. */
export const BLOB = '3f0c5c1e-58c1-4f0a-9d0c-1c2f8a4b7e11'
/** What the services were asked, in order. */
export const asked: unknown[] = []
/** Tells an event as the services would. */
export let tell: (event: HostEvent) => void = () => undefined

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
  put: async (bytes) => {
    asked.push({ put: [...bytes] })
    return BLOB
  },
  close: async () => undefined,
}

type Patience = Parameters<typeof startLoopbackHost>[0]['patience']

const folder = mkdtempSync(join(tmpdir(), 'camberwright-page-'))
const pageFolder = join(folder, 'page')
export let host: LoopbackHost
/** The host's own name, with its port. */
export let own = ''
/** The cookie of one who was let in. */
export let cookie = ''

export const get = (path: string, ...headers: readonly string[]): Promise<RawAnswer> =>
  rawRequest(host.port, [`GET ${path} HTTP/1.1`, `Host: ${own}`, ...headers])

export const getAdmitted = (path: string): Promise<RawAnswer> => get(path, `Cookie: ${cookie}`)

export const post = (path: string, body: string, ...headers: readonly string[]): Promise<RawAnswer> =>
  rawRequest(
    host.port,
    [
      ...[`POST ${path} HTTP/1.1`, `Host: ${own}`, `Cookie: ${cookie}`, `Content-Length: ${Buffer.byteLength(body)}`],
      ...(headers.length > 0 ? headers : [`Origin: http://${own}`, 'Content-Type: application/json']),
    ],
    body,
  )

export const startPath = (): string => host.newStartAddress().replace(/^http:\/\/[^/]+/, '')

/** Starts the host before the tests of a file, on a page folder with what must and must not be handed out. */
export const onLoopbackHost = (patience?: Patience): void => {
  beforeAll(async () => {
    mkdirSync(join(pageFolder, 'assets'), { recursive: true })
    writeFileSync(join(pageFolder, 'index.html'), '<!doctype html><title>page</title>')
    writeFileSync(join(pageFolder, 'assets', 'a.js'), 'export {}')
    writeFileSync(join(pageFolder, '.secret.js'), 'secret')
    writeFileSync(join(pageFolder, 'notes.txt'), 'secret')
    writeFileSync(join(folder, 'secret.js'), 'secret')
    symlinkSync(join(folder, 'secret.js'), join(pageFolder, 'link.js'))
    host = await startLoopbackHost({ services, pageFolder, port: 0, ...(patience && { patience }) })
    own = `127.0.0.1:${host.port}`
    cookie = /set-cookie: ([^;]+)/.exec((await get(startPath())).head)?.[1] ?? ''
  })

  afterAll(async () => {
    await host.close()
    rmSync(folder, { recursive: true, force: true })
  })
}

import { protocol } from 'electron'
import { z } from 'zod'
import { MOST_FILE_BYTES } from '../contract/transport.ts'
import { guardHeaders } from '../page/contentPolicy.ts'
import { pageFile } from '../page/pageFiles.ts'
import type { ServiceClient } from '../serviceClient.ts'
import { SCHEME } from './pageOrigin.ts'

/** Must run before Electron is ready: gives the program's own pages the rights of a web origin of their own. */
export const declareScheme = (): void =>
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ])

const respond = (status: number, mediaType: string, bytes: Uint8Array | null, more: Record<string, string> = {}) =>
  new Response(bytes === null ? null : new Uint8Array(bytes), {
    status,
    headers: { ...guardHeaders, 'content-type': mediaType, ...more },
  })

const nothing = () => respond(404, 'text/plain', null)

const blob = async (services: ServiceClient, id: string): Promise<Response> => {
  const made = z.uuid().safeParse(id).success ? await services.blob(id) : null
  if (made === null) return nothing()
  return respond(200, made.mediaType, made.bytes, {
    'content-disposition': `inline; filename*=UTF-8''${encodeURIComponent(made.fileName)}`,
  })
}

const file = async (pageFolder: string, pathname: string): Promise<Response> => {
  const found = await pageFile(pageFolder, pathname)
  return found === null ? nothing() : respond(200, found.mediaType, found.bytes)
}

const FILE_TYPE = 'application/octet-stream'

/** Takes in a file that the page hands over, as the loopback host does. */
const put = async (services: ServiceClient, request: Request): Promise<Response> => {
  if (request.headers.get('content-type') !== FILE_TYPE) return respond(415, 'text/plain', null)
  const bytes = new Uint8Array(await request.arrayBuffer())
  if (bytes.length > MOST_FILE_BYTES) return respond(413, 'text/plain', null)
  const answer = JSON.stringify({ blobId: await services.put(bytes) })
  return respond(200, 'application/json', new TextEncoder().encode(answer))
}

/** Answers the page's own requests: its built files, and what the services made for it. */
export const servePage = (pageFolder: string, services: ServiceClient): void =>
  protocol.handle(SCHEME, async (request) => {
    const { method } = request
    const { host, pathname } = new URL(request.url)
    if (host === 'app' && method === 'POST' && pathname === '/blob') return put(services, request)
    if (host !== 'app' || method !== 'GET') return nothing()
    return pathname.startsWith('/blob/') ? blob(services, pathname.slice('/blob/'.length)) : file(pageFolder, pathname)
  })

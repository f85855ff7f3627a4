import type { IncomingMessage, ServerResponse } from 'node:http'
import { z } from 'zod'
import { pageFile } from '../page/pageFiles.ts'
import type { ServiceClient } from '../serviceClient.ts'
import { type Asked, askedOf, isAddressedHere, isForOtherPage, isFromOwnPage } from './address.ts'
import { type Admission, startAddress } from './admission.ts'
import { readFile, readJson } from './body.ts'
import type { EventStreams } from './events.ts'
import { type Refusal, refuse, reply, replyJson } from './reply.ts'

/** What the loopback host answers from. */
export interface Desk {
  readonly port: number
  /** Where the built page lies. */
  readonly pageFolder: string
  readonly services: ServiceClient
  readonly admission: Admission
  readonly events: EventStreams
}

/** Most characters of a call's name or id; both are far shorter. */
const NAME_LENGTH = 200

const callSchema = z.strictObject({
  callId: z.string().min(1).max(NAME_LENGTH),
  name: z.string().max(NAME_LENGTH),
  input: z.unknown(),
})
const cancelSchema = z.strictObject({ callId: z.string().max(NAME_LENGTH) })

const begin = ({ admission }: Desk, { query }: Asked, response: ServerResponse): void => {
  const cookie = admission.admit(query.get('code') ?? '')
  if (cookie === null) refuse(response, 401)
  else reply(response, 303, 'text/plain; charset=utf-8', '', { location: '/', 'set-cookie': cookie })
}

/** A start on data that is served already is told where. */
const again = ({ port, admission }: Desk, response: ServerResponse): void => {
  if (admission.hasKey(response.req.headers.authorization))
    reply(response, 200, 'text/plain; charset=utf-8', startAddress(port, admission))
  else refuse(response, 401)
}

const blob = async ({ services }: Desk, id: string, response: ServerResponse): Promise<void> => {
  const made = z.uuid().safeParse(id).success ? await services.blob(id) : null
  if (made === null) return refuse(response, 404)
  reply(response, 200, made.mediaType, made.bytes, {
    'content-disposition': `inline; filename*=UTF-8''${encodeURIComponent(made.fileName)}`,
  })
}

const file = async ({ pageFolder }: Desk, pathname: string, response: ServerResponse): Promise<void> => {
  const found = await pageFile(pageFolder, pathname)
  if (found === null) return refuse(response, 404)
  reply(response, 200, found.mediaType, found.bytes)
}

const get = async (desk: Desk, { pathname }: Asked, response: ServerResponse): Promise<void> => {
  if (pathname === '/events') return desk.events.open(response)
  if (pathname.startsWith('/blob/')) return blob(desk, pathname.slice('/blob/'.length), response)
  return file(desk, pathname, response)
}

const call = async ({ services }: Desk, body: unknown, response: ServerResponse): Promise<void> => {
  const asked = callSchema.safeParse(body)
  if (!asked.success) return refuse(response, 400)
  replyJson(response, await services.call(asked.data.name, asked.data.input, asked.data.callId))
}

const cancel = ({ services }: Desk, body: unknown, response: ServerResponse): void => {
  const asked = cancelSchema.safeParse(body)
  if (asked.success) {
    services.cancel(asked.data.callId)
    replyJson(response, null)
  } else refuse(response, 400)
}

/** Takes a file in; what is in it is for the calls that read it to judge. */
const put = async ({ services }: Desk, response: ServerResponse): Promise<void> => {
  const file = await readFile(response.req)
  if (!file.ok) return refuse(response, file.status)
  replyJson(response, { blobId: await services.put(file.value) })
}

const post = async (desk: Desk, { pathname }: Asked, response: ServerResponse): Promise<void> => {
  if (pathname === '/blob') return put(desk, response)
  if (pathname !== '/call' && pathname !== '/cancel') return refuse(response, 404)
  const body = await readJson(response.req)
  if (!body.ok) return refuse(response, body.status)
  return pathname === '/call' ? call(desk, body.value, response) : cancel(desk, body.value, response)
}

/** Why a request is turned away before its path is looked at, or null where it is let in. */
const turnedAway = (desk: Desk, request: IncomingMessage, asked: Asked | null): Refusal | null => {
  const { method = '', headers } = request
  if (!isAddressedHere(request, desk.port) || isForOtherPage(request)) return 403
  if (!['GET', 'HEAD', 'POST'].includes(method)) return 405
  if (asked === null) return 400
  if (method === 'GET' && asked.pathname === '/start') return null
  // No page can send the key along: it would have to ask for leave first, and gets none.
  if (method === 'POST' && asked.pathname === '/again') return null
  if (method === 'POST' && !isFromOwnPage(request)) return 403
  return desk.admission.isAdmitted(headers.cookie) ? null : 401
}

/** Answers one request. The order is the guard: whom it was addressed to, whence it comes, who asks, and only then what. */
export const answer = async (desk: Desk, request: IncomingMessage, response: ServerResponse): Promise<void> => {
  const asked = askedOf(request)
  const refusal = turnedAway(desk, request, asked)
  if (refusal !== null || asked === null) return refuse(response, refusal ?? 400)
  if (request.method === 'POST' && asked.pathname === '/again') return again(desk, response)
  if (request.method === 'POST') return post(desk, asked, response)
  return request.method === 'GET' && asked.pathname === '/start'
    ? begin(desk, asked, response)
    : get(desk, asked, response)
}

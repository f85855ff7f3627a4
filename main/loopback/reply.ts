import type { ServerResponse } from 'node:http'
import { guardHeaders } from '../page/contentPolicy.ts'
import { liveTexts } from '../texts.ts'

const t = liveTexts()

/** Every answer of the loopback host goes out here, so none lacks the guarding headers. */
export const reply = (
  response: ServerResponse,
  status: number,
  mediaType: string,
  bytes: string | Uint8Array,
  more: Readonly<Record<string, string>> = {},
): void => {
  response.writeHead(status, {
    ...guardHeaders,
    'content-type': mediaType,
    'content-length': Buffer.byteLength(bytes),
    ...more,
  })
  response.end(response.req.method === 'HEAD' ? undefined : bytes)
}

export const replyJson = (response: ServerResponse, value: unknown): void =>
  reply(response, 200, 'application/json; charset=utf-8', JSON.stringify(value))

/** Statuses that a person may come to see; each has its sentence in the catalogue. */
export type Refusal = 400 | 401 | 403 | 404 | 405 | 413 | 415

/** A plain page that says why not. */
export const refuse = (response: ServerResponse, status: Refusal): void => {
  const more = { ...(status === 405 && { allow: 'GET, HEAD, POST' }), ...(status === 413 && { connection: 'close' }) }
  reply(response, status, 'text/plain; charset=utf-8', `${t(`hosts:refused.${status}`)}\n`, more)
  response.req.resume()
}

import type { IncomingMessage } from 'node:http'
import { MOST_FILE_BYTES } from '../contract/transport.ts'

/** Most bytes of one call: a job with the finest starting edge takes 20 kB, so this is ample, and memory stays safe. */
export const MOST_BODY_BYTES = 8 * 1024 * 1024

/** A body that was read, or the status that refuses it. */
export type Body<T = unknown> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly status: 400 | 413 | 415 }

const collect = async (request: IncomingMessage, mostBytes: number): Promise<Buffer | null> => {
  const parts: Buffer[] = []
  let length = 0
  for await (const part of request.iterator({ destroyOnReturn: false })) {
    length += (part as Buffer).length
    if (length > mostBytes) return null
    parts.push(part as Buffer)
  }
  return Buffer.concat(parts)
}

const isOf = (request: IncomingMessage, mediaType: RegExp): boolean =>
  mediaType.test(request.headers['content-type'] ?? '')

/** Reads a request's body up to the limit and no further, whatever length it claims. */
const readBytes = async (request: IncomingMessage, mediaType: RegExp, mostBytes: number): Promise<Body<Buffer>> => {
  if (!isOf(request, mediaType)) return { ok: false, status: 415 }
  if (Number(request.headers['content-length'] ?? 0) > mostBytes) return { ok: false, status: 413 }
  const value = await collect(request, mostBytes)
  return value === null ? { ok: false, status: 413 } : { ok: true, value }
}

/** A call, as JSON. */
export const readJson = async (request: IncomingMessage): Promise<Body> => {
  const bytes = await readBytes(request, /^application\/json\s*(;|$)/i, MOST_BODY_BYTES)
  if (!bytes.ok) return bytes
  try {
    return { ok: true, value: JSON.parse(bytes.value.toString('utf8')) }
  } catch {
    return { ok: false, status: 400 }
  }
}

/** A file, as its bytes. Its media type is one that no form of another page can send. */
export const readFile = (request: IncomingMessage): Promise<Body<Buffer>> =>
  readBytes(request, /^application\/octet-stream$/i, MOST_FILE_BYTES)

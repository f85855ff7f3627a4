import type { IncomingMessage } from 'node:http'

/** Most bytes of one call: a job with the finest starting edge takes 20 kB, so this is ample, and memory stays safe. */
export const MOST_BODY_BYTES = 8 * 1024 * 1024

/** A body read as JSON, or the status that refuses it. */
export type Body =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly status: 400 | 413 | 415 }

const collect = async (request: IncomingMessage): Promise<Buffer | null> => {
  const parts: Buffer[] = []
  let length = 0
  for await (const part of request.iterator({ destroyOnReturn: false })) {
    length += (part as Buffer).length
    if (length > MOST_BODY_BYTES) return null
    parts.push(part as Buffer)
  }
  return Buffer.concat(parts)
}

const isJson = (request: IncomingMessage): boolean =>
  /^application\/json\s*(;|$)/i.test(request.headers['content-type'] ?? '')

/** Reads a request's body up to the limit and no further, whatever length it claims. */
export const readJson = async (request: IncomingMessage): Promise<Body> => {
  if (!isJson(request)) return { ok: false, status: 415 }
  if (Number(request.headers['content-length'] ?? 0) > MOST_BODY_BYTES) return { ok: false, status: 413 }
  const bytes = await collect(request)
  if (bytes === null) return { ok: false, status: 413 }
  try {
    return { ok: true, value: JSON.parse(bytes.toString('utf8')) }
  } catch {
    return { ok: false, status: 400 }
  }
}

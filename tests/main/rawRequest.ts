import { connect } from 'node:net'

/** An answer as it came over the wire. */
export interface RawAnswer {
  readonly status: number
  readonly head: string
  readonly body: string
}

/** How long a host may be silent before a test calls it hung. */
const SILENT_MS = 10_000

const read = (text: string): RawAnswer => {
  const end = text.indexOf('\r\n\r\n')
  const head = end < 0 ? text : text.slice(0, end)
  return { status: Number(head.split(' ')[1] ?? 0), head, body: end < 0 ? '' : text.slice(end + 4) }
}

/**
 * Sends a request byte for byte, since no client library would send a hostile one.
 *
 * @param lines request line and headers; `Connection: close` is added
 */
export const rawRequest = (port: number, lines: readonly string[], body = ''): Promise<RawAnswer> =>
  new Promise((resolve, reject) => {
    const parts: Buffer[] = []
    const socket = connect(port, '127.0.0.1')
    socket.setTimeout(SILENT_MS, () => socket.destroy(new Error('the host is silent')))
    socket.on('data', (part) => parts.push(part))
    socket.on('end', () => resolve(read(Buffer.concat(parts).toString('utf8'))))
    socket.on('error', reject)
    socket.write(`${[...lines, 'Connection: close'].join('\r\n')}\r\n\r\n${body}`)
  })

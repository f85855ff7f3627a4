import type { ServerResponse } from 'node:http'
import type { HostEvent } from '../contract/events.ts'
import { guardHeaders } from '../page/contentPolicy.ts'

/** A page that leaves this much unread no longer listens (bytes); it comes back and reads everything anew. */
const MOST_UNREAD_BYTES = 1_000_000

/** The open pages that listen for events. */
export interface EventStreams {
  open(response: ServerResponse): void
  send(event: HostEvent): void
  close(): void
}

export const createEventStreams = (): EventStreams => {
  const open = new Set<ServerResponse>()
  return {
    open: (response) => {
      response.writeHead(200, { ...guardHeaders, 'content-type': 'text/event-stream; charset=utf-8' })
      // Something has to be sent before the browser counts the stream as open.
      response.write(': open\n\n')
      open.add(response)
      response.once('close', () => open.delete(response))
    },
    send: (event) => {
      for (const response of open) {
        if (response.writableLength > MOST_UNREAD_BYTES) response.destroy()
        else response.write(`data: ${JSON.stringify(event)}\n\n`)
      }
    },
    close: () => {
      for (const response of open) response.end()
    },
  }
}

import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { CallInput, CallName, CallOutput } from '../../main/contract/calls.ts'
import { nouns } from '../../main/contract/entities.ts'
import { eventSchema, type HostEvent } from '../../main/contract/events.ts'
import { MOST_FILE_BYTES, type Transport } from '../../main/contract/transport.ts'

declare global {
  interface Window {
    /** Put there by the Electron preload; absent in a browser. */
    readonly camberwright?: Omit<Transport, 'blobUrl' | 'put'>
  }
}

const lost = failed(problem('hostLost'))

const post = async (address: string, body: unknown): Promise<Response> =>
  fetch(address, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })

/** After a gap in the events anything may have changed. */
const everythingChanged: readonly HostEvent[] = nouns.map((noun) => ({ type: 'changed', noun, ids: [] }))

const listeners = new Set<(event: HostEvent) => void>()
let source: EventSource | null = null

const tellAll = (event: HostEvent): void => {
  for (const listener of listeners) listener(event)
}

const openSource = (): EventSource => {
  const fresh = new EventSource('/events')
  let gap = false
  fresh.onerror = () => {
    gap = true
  }
  fresh.onopen = () => {
    if (gap) everythingChanged.forEach(tellAll)
    gap = false
  }
  fresh.onmessage = ({ data }) => {
    const event = eventSchema.safeParse(JSON.parse(data))
    if (event.success) tellAll(event.data)
  }
  return fresh
}

/** All listeners of a window share one connection: an engine has only six for all its windows together. */
const listen = (listener: (event: HostEvent) => void): (() => void) => {
  listeners.add(listener)
  source ??= openSource()
  return () => {
    listeners.delete(listener)
    if (listeners.size > 0) return
    source?.close()
    source = null
  }
}

/** The loopback host, spoken to from its own page. */
const http: Omit<Transport, 'blobUrl' | 'put'> = {
  call: async (name, input, callId) => {
    try {
      const response = await post('/call', { callId, name, input })
      return (await response.json()) as Result<CallOutput<typeof name>>
    } catch {
      return lost
    }
  },
  cancel: (callId) => {
    post('/cancel', { callId }).catch(() => undefined)
  },
  onEvent: listen,
}

/** Both hosts take files in at the page's own address. */
const put: Transport['put'] = async (file) => {
  if (file.size > MOST_FILE_BYTES) return failed(problem('fileTooLarge', '', { mostMb: MOST_FILE_BYTES / 2 ** 20 }))
  try {
    const headers = { 'content-type': 'application/octet-stream' }
    const response = await fetch('/blob', { method: 'POST', headers, body: await file.arrayBuffer() })
    const { blobId } = (await response.json()) as { readonly blobId: string | null }
    return blobId === null ? lost : ok({ blobId })
  } catch {
    return lost
  }
}

/** The one way to the data, whatever the host. */
export const transport: Transport = {
  ...(window.camberwright ?? http),
  blobUrl: (blobId) => `/blob/${blobId}`,
  put,
}

/** A call whose id nobody needs. @returns as `Transport.call`; a lost host is the problem `hostLost` */
export const call = <N extends CallName>(name: N, input: CallInput<N>): Promise<Result<CallOutput<N>>> =>
  transport.call(name, input, crypto.randomUUID())

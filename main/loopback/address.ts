import type { IncomingMessage } from 'node:http'

/** The only address the loopback host listens on: no other machine can reach it. */
export const LOOPBACK = '127.0.0.1'

const hostsOf = (port: number): readonly string[] => [`${LOOPBACK}:${port}`, `localhost:${port}`]

const valuesOf = (request: IncomingMessage, name: string): readonly string[] => request.headersDistinct[name] ?? []

/**
 * Whether a request was addressed to this host by one of its two names, exactly and once. A page elsewhere whose name was
 * made to point here is told by this alone, so it is asked before anything else.
 */
export const isAddressedHere = (request: IncomingMessage, port: number): boolean => {
  const hosts = valuesOf(request, 'host')
  return hosts.length === 1 && hostsOf(port).includes(hosts[0] as string)
}

/** Whether a request that may change something comes from this host's own page. */
export const isFromOwnPage = (request: IncomingMessage): boolean => {
  const origins = valuesOf(request, 'origin')
  return origins.length === 1 && origins[0] === `http://${request.headers.host}`
}

/** What a browser says of its own page's requests, and of an address that was typed or handed to it. */
const ownSites = ['same-origin', 'none']

/** Whether a browser says that another page is behind a request. What is no browser says nothing, and is judged by its cookie. */
export const isForOtherPage = (request: IncomingMessage): boolean =>
  valuesOf(request, 'sec-fetch-site').some((site) => !ownSites.includes(site))

/** An address as the browser asked for it, without any guessing: the path still encoded, and its query. */
export interface Asked {
  readonly pathname: string
  readonly query: URLSearchParams
}

/** @returns null for anything but a plain path, such as a whole address meant for a proxy */
export const askedOf = (request: IncomingMessage): Asked | null => {
  const url = request.url ?? ''
  if (!url.startsWith('/') || url.startsWith('//')) return null
  const mark = url.indexOf('?')
  return mark < 0
    ? { pathname: url, query: new URLSearchParams() }
    : { pathname: url.slice(0, mark), query: new URLSearchParams(url.slice(mark + 1)) }
}
